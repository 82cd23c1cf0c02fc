/** What is wrong with a library file or a folder of takes, where, and what to do. */
export const LIBRARY_FILE = {
  damaged: (file: string, where: string, what: string) => `${file}, ${where}: ${what}.`,
  /** @param found what is wrong, a sentence */
  changed: (found: string) => `${found} The file was changed or is damaged; export it again.`,
  unexpected: (expected: string | null, found: string) =>
    `expected ${expected ?? 'another value'}, found ${found}`,
  notJson: (file: string, reason: string) =>
    `${file} is not JSON: ${reason}. Export the library again.`,
  noFormat: (file: string, format: string) =>
    `${file} does not say "format": "${format}" with a version, so this is not a Movewright library.`,
  newer: (version: number, newest: number) =>
    `This library file has format version ${version}; this Movewright reads up to ${newest}. Update Movewright and import it again.`,
  topLevel: 'top level',
  gestureTwice: 'two gestures have the same id',
  noRotation: (code: string) => `found no rotation (${code})`,
  noDate: (text: string) => `"${text}" is not a date`,
  idTwice: 'the id appears twice',
  fileTwice: 'two recordings share a file',
  otherLibrary: 'libraryId is not the id of this library',
  fieldNoDate: (field: string, text: string) => `${field} "${text}" is not a date`,
  gapBackwards: 'a gap ends before it starts',
  noSuchGesture: (id: string) => `gestureId "${id}" is not a gesture of this library`,
  trimBackwards: 'trim ends before it starts',
  noTakes: (folder: string) => `${folder} holds no CSV takes. See "Folder of takes" in FORMAT.md.`,
  csvFile: 'CSV file',
  takeName: (path: string) =>
    `${path} does not say gesture and tester. Name it gesture/tester_number.csv or gesture__tester__number.csv.`,
}
