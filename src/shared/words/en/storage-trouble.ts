/** Why nothing was stored, and what to do. */
export const STORAGE_TROUBLE = {
  olderTab: 'Movewright is open in another tab in an older version: close that tab to go on here.',
  newerTab:
    'Movewright was opened in a newer version in another tab: reload this page to go on here.',
  otherTabStores:
    'Another tab of Movewright is the one that stores, so nothing was saved here: go on there, or tap "Store here".',
  full: 'The storage of this browser is full, so nothing was saved: free space on the device, or export a library and remove it.',
  notStorable:
    'The data hold something that cannot be stored, so nothing was saved: this is a fault of the app, please report it.',
  damagedRecording: (recordingId: string) =>
    `Recording ${recordingId} is damaged (samples not in time order, not numbers, or facts missing), so nothing was saved: leave it out and try again.`,
  noLibrary:
    'The library is not stored on this device any more, so nothing was saved: open another one.',
  noRecording: 'The recording is not stored on this device any more, so nothing was changed.',
  closed: 'Storage was closed: reload the page to go on.',
  upgradeFailed:
    'The stored libraries could not be brought to the new version and were left as they were: reload, and report it if it happens again.',
  newer:
    'The libraries on this device were stored by a newer Movewright than this one: reload the page while online to get it.',
  twice:
    'A library or recording with the same identity is already stored, so nothing was added: remove the stored one first.',
  /** @param cause the browser's own name for it, '' where it has none */
  failed: (cause: string) =>
    `The browser's database failed (${cause || 'unknown error'}): try again, and reload the page if it stays so.`,
  alreadyOver:
    'This recording was already kept or dropped, perhaps in another tab: start a new one.',
  damagedSamples:
    'The samples of this recording are damaged in the database: drop it and record again.',
}
