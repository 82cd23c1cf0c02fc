/** What is said while sessions come home and plans are kept. */
export const COLLECTING = {
  reading: (file: string) => `Reading ${file}`,
  broughtHome: (recordings: number) =>
    recordings === 1 ? '1 recording brought home.' : `${recordings} recordings brought home.`,
  unreadable: 'The file could not be read: choose it once more.',
  tooManyGestures: (most: number, wanted: number) =>
    `A library holds at most ${most} gestures and there would be ${wanted}: take some of the new ones for gestures it has.`,
  otherLibrary: (library: string) =>
    `The files were read for the library "${library}" and another one is open: open "${library}" again, or choose the files once more.`,
  nothing: 'No files are read at the moment: choose them once more.',
  notDecided: 'Labels that were changed on both sides are not decided yet: choose one of each.',
  withdrawn: (tester: string) => `All recordings of ${tester} withdrawn.`,
  dropped: (takes: number) => (takes === 1 ? 'Take dropped.' : `${takes} takes dropped.`),
  planEmpty: 'A plan needs at least one gesture: choose one.',
  planNotStored: 'The plan could not be stored.',
  planDeleted: 'Plan deleted.',
  noFolder: 'There is no shared folder; name one first.',
  lookingIntoFolder: 'Looking into the folder',
  fetchingFromFolder: 'Fetching from the folder',
  sendingToFolder: 'Sending to the folder',
  fetching: (number: number, of: number) => `Fetching ${number} of ${of}`,
  sending: (number: number, of: number) => `Sending ${number} of ${of}`,
}
