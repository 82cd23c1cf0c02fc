/**
 * What the browser's answer about keeping data means.
 * @param persisted as `StorageManager.persisted()`, null when the browser cannot say
 */
export function storageSentence(persisted: boolean | null): string {
  if (persisted === true) return 'The browser promised to keep the data until you delete it.'
  if (persisted === false) {
    return 'The browser may delete the data when room is short. Back it up; adding the app to the home screen helps.'
  }
  return 'This browser does not say whether it keeps the data. Back it up.'
}
