/** How another engineer comes to the figures of a report. What stands between ` is typed or named as code. */
export const REPORT_CHECK = {
  title: 'To check it',
  caption: 'Versions, and SHA-256 of what was used',
  formats: 'Library format, model format',
  libraryFile: 'Library file',
  modelBytes: 'Model bytes',
  noModel: 'no model',
  coreSources: 'Core sources',
  version: (app: string, commit: string) => `${app}, commit \`${commit}\``,
  /** Options as they are typed. */
  steps: ({ holdout, matcher }: { holdout: string; matcher: string }) => [
    'Export the library file on the phone this report was made on; `sha256sum LIBRARY.zip` prints the first of these sums.',
    `\`npm run evaluate -- LIBRARY.zip --holdout ${holdout} --matcher ${matcher} --report report.html\` trains and measures again, in Node, with the same code: every figure above must come out the same.`,
    'The second sum stands in `model/model.h` of the firmware bundle. `LC_ALL=C; cat core/*.[ch] | sha256sum` in the bundle prints the third.',
    '`make test` in the bundle compiles the core and compares its answers with the phone’s, byte for byte.',
  ],
}
