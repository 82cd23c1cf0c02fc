/** What a long job of the page is doing. */
export const PROGRESS = {
  starting: 'Starting',
  writing: 'Writing',
  reading: 'Reading',
  generatingDemo: 'Generating the lantern parade',
  writingLibrary: (library: string) => `Writing ${library}`,
  restoring: (library: string) => `Restoring ${library}`,
}
