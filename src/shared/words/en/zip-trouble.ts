const mib = (bytes: number) => (bytes / 1048576).toFixed(1)

/** What is wrong with a ZIP file, and what to do. */
export const ZIP_TROUBLE = {
  damaged: (what: string) => `The ZIP file is damaged: ${what}. Copy or export it again.`,
  noZip: 'This is not a ZIP file, or its end is missing. Choose another file.',
  zip64: 'The ZIP file is in the 64-bit format, which is not read here.',
  directoryEnds: (found: number, of: number) =>
    `its directory ends after ${found} of ${of} entries`,
  encrypted: (path: string) => `"${path}" in the ZIP is encrypted. Pack it without a password.`,
  method: (path: string, method: number) =>
    `"${path}" is packed by method ${method}; pack it with deflate.`,
  elsewhere: (path: string) => `"${path}" is not where the directory says`,
  otherName: (path: string) => `"${path}" has another name in front of its data`,
  cutShort: (path: string) => `"${path}" is cut short`,
  overlap: (one: string, other: string) => `"${one}" and "${other}" share the same bytes`,
  theZip: 'The ZIP file',
  tooManyFiles: (files: number, most: number) =>
    `The ZIP holds ${files} files; at most ${most} are read.`,
  outside: (path: string) =>
    `The ZIP holds the path "${path}", which leads outside its folder. Nothing was read.`,
  twice: (path: string) => `The ZIP holds "${path}" twice. Pack it again with one.`,
  itsContent: 'Its content',
  tooLarge: ({ what, bytes, most }: { what: string; bytes: number; most: number }) =>
    `${what} would take ${mib(bytes)} MiB; at most ${mib(most)} MiB are read. Split the library.`,
  entryDamaged: (path: string) => `"${path}" in the ZIP is damaged. Copy or export it again.`,
  otherCount: ({
    file,
    found,
    document,
    says,
  }: {
    file: string
    found: number
    document: string
    says: number
  }) =>
    `${file} has ${found} samples; ${document} says ${says}. Rows are missing or were added; export it again.`,
  altered: (file: string, document: string) =>
    `${file} does not hold the samples that ${document} says: it was altered on the way. Bring the file over again.`,
  missing: (path: string) => `${path} is missing in the ZIP. Choose a Movewright library file.`,
  notUtf8: (path: string) => `${path} is not UTF-8 text. Save it as UTF-8.`,
}
