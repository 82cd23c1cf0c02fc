/** What cannot be done without an open library, or with the one that is open. */
export const OPEN_LIBRARY = {
  none: 'There is no library open; open or create one.',
  noneFirst: 'There is no library open; open or create one first.',
  noneToCompare: 'There is no library open to compare with.',
  goneToCompare: 'The library to compare with is gone.',
  noneToExport: 'There is no library open to export.',
  goneToExport: 'The library to export is gone.',
  noneToRename: 'There is no library open to rename.',
  noneToReportOn: 'There is no library open to report on.',
  noneOpen: 'There is no library open.',
  notOpen: 'No library is open.',
  recordNeedsOne: 'No library is open; open or create one first.',
  anotherOpened: 'Another library was opened meanwhile.',
  notOfThis: 'This recording is not in the open library.',
  undoThatFirst: 'Its library was deleted; undo that first.',
  gone: 'The library is not here any more: open another one.',
}
