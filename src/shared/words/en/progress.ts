/** What a long job of the page is doing. */
export const PROGRESS = {
  starting: 'Starting',
  broke: (error: string) =>
    `The app made a mistake (${error}): try again, and load the page anew if it stays so.`,
  writing: 'Writing',
  reading: 'Reading',
  generatingDemo: 'Generating the lantern parade',
  writingLibrary: (library: string) => `Writing ${library}`,
  restoring: (library: string) => `Restoring ${library}`,
}
