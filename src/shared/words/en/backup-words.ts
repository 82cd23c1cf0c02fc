import type { BackupContents } from '../../backup/contents'
import type { PlannedLibrary } from '../../backup/plan-restore'
import type { LostRecording } from '../../backup/salvage-library'
import { plural } from './numbers'

/** What a loss of this phone would cost, for people. */
export function unsavedSentence(unsaved: number, recordings: number): string {
  if (recordings === 0) return 'Nothing has been recorded here yet.'
  if (unsaved === 0) return 'Every recording was handed over in a file. Keep that file elsewhere.'
  const what =
    unsaved === recordings
      ? plural('recording', unsaved)
      : `${unsaved} of ${plural('recording', recordings)}`
  return `${what} ${unsaved === 1 ? 'is' : 'are'} on this phone only: lost with it, or when the browser clears its data.`
}

/** A library that could not be written into a backup, and a sentence that says why. */
export interface LeftOut {
  name: string
  why: string
}

/** What a backup lacks that was made all the same. */
export function leftOutLine({ name, why }: LeftOut): string {
  return `${name} is not in this backup and stays on this phone only. ${why}`
}

/** Why there is no backup at all. */
export function nothingSentence(leftOut: readonly LeftOut[]): string {
  if (leftOut.length === 0) return 'There is no library here to back up.'
  const each = leftOut.map(({ name, why }) => `${name}: ${why}`)
  return `No library could be backed up. ${each.join(' ')}`
}

/** What a file turned out to be. */
export function contentsSentence({ isBackup, madeAt, libraries, gone }: BackupContents): string {
  const lost = libraries.reduce((sum, one) => sum + one.lost.length, 0)
  const count = plural('library', libraries.length + gone.length).replace('librarys', 'libraries')
  if (isBackup && madeAt === null) {
    const restorable = `What is whole can be restored${lost === 0 ? '' : '; the rest is listed'}.`
    return `A backup whose date and list of libraries are damaged, ${count} found in it. ${restorable}`
  }
  const what = madeAt === null ? 'A library file' : `A backup of ${madeAt.slice(0, 10)}, ${count}`
  if (lost + gone.length === 0) return `${what}, whole.`
  return `${what}, damaged. What is whole can be restored; the rest is listed.`
}

/** What a restore does with one library. */
export function waySentence({ way, recordings, withheld }: PlannedLibrary): string {
  const all = plural('recording', recordings.length)
  const out =
    withheld === 0
      ? ''
      : ` ${plural('recording', withheld)} withdrawn or dropped here ${withheld === 1 ? 'stays' : 'stay'} out.`
  switch (way.kind) {
    case 'as-it-was':
      return `Not on this phone: comes back as it was, ${all}.${out}`
    case 'beside':
      return `Comes beside what is here, as a library of its own, ${all}.${out}`
    case 'nothing':
      return `All of it is on this phone: nothing to do.${out}`
    case 'add':
      return `${addSentence(way)} What is here stays as it is.${out}`
  }
}

function addSentence(way: Extract<PlannedLibrary['way'], { kind: 'add' }>): string {
  const parts = [
    [way.missing.length, `${plural('recording', way.missing.length)} missing here`],
    [way.undelete.length, `${plural('recording', way.undelete.length)} deleted here`],
    [way.gestures, plural('gesture', way.gestures)],
  ] as const
  const come = parts.flatMap(([count, text]) => (count === 0 ? [] : [text]))
  return come.length === 0
    ? 'Deleted here: comes back.'
    : `On this phone: ${come.join(' and ')} come back.`
}

/** How the facts of a damaged library were found, where that matters. */
export function sourceSentence({ from }: Pick<PlannedLibrary, 'from'>): string | null {
  if (from !== 'paths') return null
  return 'The list of facts is lost. Gesture and tester are known from the names of the files; dates, trims and the sign of gravity are not.'
}

/** One lost recording by its names. */
export function lostLine({ gesture, tester, file }: LostRecording): string {
  return `${gesture ?? 'Background'} by ${tester} (${file})`
}
