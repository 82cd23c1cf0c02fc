import { durationText } from './numbers'

/** What the app says after something was done, or could not be. */
export const NOTICES = {
  gesturesFull: (most: number) =>
    `A recogniser holds at most ${most} gestures; delete one, or start another library.`,
  gestureNotStored: 'The gesture could not be stored.',
  nameNotStored: 'The new name could not be stored.',
  gestureDeleted: (gesture: string, takes: number) =>
    `"${gesture}" deleted with ${takes === 1 ? '1 take' : `${takes} takes`}.`,
  libraryDeleted: (library: string) => `Library "${library}" deleted.`,
  takeMoved: (gesture: string) => `Take moved to "${gesture}".`,
  recordingsDeleted: (count: number) =>
    count === 1 ? 'Recording deleted.' : `${count} recordings deleted.`,
  recordingsAdded: (count: number) =>
    count === 1 ? 'One recording added.' : `${count} recordings added.`,
  takeKept: (gesture: string | undefined) => `Take of ${gesture ?? 'a gesture'} kept.`,
  backgroundKept: (durationMs: number) => `Background kept: ${durationText(durationMs)}.`,
  unknownDevice: 'unknown device',
  otherTabRecords: 'The other tab is recording: it goes on storing until that is ended.',
  lostMeanwhile:
    'The browser deleted what was stored here. Gestures and settings were stored again from memory, and what is being recorded goes on. Takes stored before are gone: restore them from a backup.',
  lostSince:
    'The browser has deleted what was stored here since the last visit. Restore it from a backup: Libraries, Back up or restore.',
  modelNotKept:
    'This model could not be put aside for comparison; reload the page and train again.',
  stoppedBefore: 'It was stopped before it had started.',
  tooSlow: 'This phone could not keep up with the readings; close other pages and start again.',
}
