import type { Gesture, Recording } from '../model/library'

/** Folder of recordings that hold no gesture. */
export const BACKGROUND_FOLDER = 'background'

/** Names Windows keeps for devices; a folder of that name cannot be unpacked there. */
const DEVICE_NAME = /^(con|prn|aux|nul|com\d|lpt\d)$/i

/**
 * A word of a path that a person can read and every file system takes: letters and digits of any
 * script, other characters as '-'. Never holds '_', which parts tester and number.
 */
export function fileWord(text: string, fallback: string): string {
  const word = [...text.normalize('NFC').replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')]
    .slice(0, 40)
    .join('')
    .replace(/^-+|-+$/g, '')
  if (word === '') return fallback
  return DEVICE_NAME.test(word) ? `${word}-` : word
}

/** A folder for each gesture by id, all different also where capitals do not count. */
export function gestureFolders(gestures: readonly Gesture[]): Map<string, string> {
  const taken = new Set([BACKGROUND_FOLDER])
  const folders = new Map<string, string>()
  for (const gesture of gestures) {
    const word = fileWord(gesture.name, 'gesture')
    let folder = word
    for (let n = 2; taken.has(folder.toLowerCase()); n++) folder = `${word}-${n}`
    taken.add(folder.toLowerCase())
    folders.set(gesture.id, folder)
  }
  return folders
}

/**
 * A path for each recording, in their order: `takes/<gesture>/<tester>_<number>.csv` or
 * `background/<tester>_<number>.csv`, numbered from 1 within gesture and tester.
 */
export function recordingPaths(
  gestures: readonly Gesture[],
  recordings: readonly Recording[],
): string[] {
  const folders = gestureFolders(gestures)
  const counts = new Map<string, number>()
  return recordings.map((recording) => {
    const folder =
      recording.kind === 'background'
        ? BACKGROUND_FOLDER
        : `takes/${folders.get(recording.gestureId) ?? 'gesture'}`
    const stem = `${folder}/${fileWord(recording.testerCode, 'tester')}`
    const key = stem.toLowerCase()
    const number = (counts.get(key) ?? 0) + 1
    counts.set(key, number)
    return `${stem}_${String(number).padStart(3, '0')}.csv`
  })
}
