/** Read where a library is begun or opened from a file. */
export const LIBRARY_OPEN = {
  name: 'Name of the library',
  create: 'Create',
  nameHint: 'Such as the prop it is for.',
  reading: 'Reading',
  openFile: 'Open a library file',
  seeWhatIsWhole: 'See what of it is whole',
}
