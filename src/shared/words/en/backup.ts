import { plural } from './numbers'

/** Read on Backup. */
export const BACKUP = {
  handedOver: (fileName: string, sizeMib: string) =>
    `${fileName}, ${sizeMib} MiB, handed over. Keep it off this phone.`,
  backUp: 'Back up',
  backUpEverything: 'Back up everything',
  onThisPhoneOnly: 'On this phone only',
  onPhoneNote: (recordings: number) => `of ${recordings} recordings`,
  inTheBackup: 'In the backup',
  librariesUnit: (libraries: number) => (libraries === 1 ? 'library' : 'libraries'),
  recordingCount: (recordings: number) => plural('recording', recordings),
  title: 'Backup',
  notLoaded: 'This part could not be loaded: reload the page while online.',
  damaged: (recordings: number) => `${plural('recording', recordings)} in the file damaged`,
  nothingWhole: (takes: number) =>
    `Nothing of it is whole: ${plural('take', takes)} lost. Look for an older backup.`,
  restore: 'Restore',
  restoreLead:
    'From a backup or a library file, of this or any older version. A damaged one gives back every take that is whole. Nothing on this phone is overwritten.',
  chooseAnotherFile: 'Choose another file',
  chooseAFile: 'Choose a file',
  addWhatIsMissing: 'Add what is missing',
  putBeside: 'Put beside',
  sameLibraries: 'Libraries that are on this phone',
  restoredStays: (message: string) => `${message} What was restored before it stays.`,
  restored: (recordings: number) => `${plural('recording', recordings)} restored.`,
  toMoves: 'To the moves',
}
