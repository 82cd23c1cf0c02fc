/** What is wrong with a backup, and what is done with what is whole. */
export const BACKUP_FILE = {
  tooLarge:
    'The backup is damaged and larger than 512 MiB, too much to search on this device. Open it on a computer: the files in it are library files by themselves.',
  newer: (version: number, newest: number) =>
    `This backup has format version ${version}; this Movewright reads up to ${newest}. Update Movewright and open it again.`,
  listDamaged: 'The list of what the backup holds is damaged.',
  looking: (number: number, of: number) => `Looking at library ${number} of ${of}`,
  nothingWhole:
    'This is no backup and no library file, or nothing in it is whole. Choose another copy.',
  salvaged: 'Salvaged',
  noTake:
    'No whole take was found in this file. Try another copy of it, from before it was damaged.',
  noName: 'Gesture without a name',
}
