/** The language of this folder, as a tag of BCP 47. */
export const LANGUAGE = { tag: 'en' }
