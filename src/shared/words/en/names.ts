/** What is wrong with a name somebody gave. */
export const NAMES = {
  empty: 'The name is empty; give at least one character.',
  tooLong: (length: number, most: number) => `The name has ${length} characters; ${most} fit.`,
  taken: (name: string) => `"${name}" is there already; choose another name.`,
}
