/** What stands for a version where the page was not built. */
export const SOURCE_VERSION = { notBuilt: 'not built' }
