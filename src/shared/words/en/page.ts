/** Read before the app runs and outside of it: the build puts these into page and manifest. */
export const PAGE = {
  description:
    'Record gestures with a phone, measure how well a small recogniser tells them apart, and export the very C files for the prop.',
  needsScript: 'Movewright records and measures on this phone, and needs JavaScript for that.',
  starting:
    'Starting … If this stays, the app did not arrive whole: reload while online. Stored takes are untouched.',
  /** Where an installed app is shown. */
  manifestDescription:
    "Record a hand's movements, measure how well they are told apart, and take the same recogniser to the board.",
}
