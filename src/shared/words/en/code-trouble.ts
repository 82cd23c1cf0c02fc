/** Why something cannot be shown as codes. */
export const CODE_TROUBLE = {
  nothing: 'There is nothing to show: record a take.',
  tooMuch: (bytes: number) =>
    `${(bytes / 1024).toFixed(0)} KiB are too much to be shown as codes: share the file instead.`,
  tooLong: (characters: number) => `${characters} characters are more than one code holds.`,
}
