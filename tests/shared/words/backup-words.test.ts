import { describe, expect, it } from 'vitest'
import type { BackupLibrary } from '../../../src/shared/backup/contents'
import type { PlannedLibrary, Way } from '../../../src/shared/backup/plan-restore'
import {
  contentsSentence,
  lostLine,
  unsavedSentence,
  waySentence,
} from '../../../src/shared/words/en/backup-words'

const planned = (way: Way, withheld = 0) =>
  ({ way, withheld, recordings: [{}, {}] }) as unknown as PlannedLibrary
const libraryWith = (lost: number) =>
  ({ lost: Array.from({ length: lost }, () => ({})) }) as unknown as BackupLibrary

describe('words of backup and restore', () => {
  it('say what a loss of the phone would cost', () => {
    expect(unsavedSentence(0, 0)).toBe('Nothing has been recorded here yet.')
    expect(unsavedSentence(0, 9)).toMatch(/^Every recording was handed over/)
    expect(unsavedSentence(1, 9)).toMatch(/^1 of 9 recordings is on this phone only/)
    expect(unsavedSentence(9, 9)).toMatch(/^9 recordings are on this phone only/)
  })

  it('say what a file is, and whether it is whole', () => {
    expect(
      contentsSentence({ isBackup: false, madeAt: null, libraries: [libraryWith(0)], gone: [] }),
    ).toBe('A library file, whole.')
    expect(
      contentsSentence({ isBackup: true, madeAt: null, libraries: [libraryWith(0)], gone: [] }),
    ).toBe(
      'A backup whose date and list of libraries are damaged, 1 library found in it. What is whole can be restored.',
    )
    const madeAt = '2026-11-25T16:00:00Z'
    expect(
      contentsSentence({ isBackup: true, madeAt, libraries: [libraryWith(0)], gone: [] }),
    ).toBe('A backup of 2026-11-25, 1 library, whole.')
    expect(
      contentsSentence({
        isBackup: true,
        madeAt,
        libraries: [libraryWith(2)],
        gone: [{ name: 'A', takes: 3 }],
      }),
    ).toBe(
      'A backup of 2026-11-25, 2 libraries, damaged. What is whole can be restored; the rest is listed.',
    )
  })

  it('say beforehand what a restore does', () => {
    expect(waySentence(planned({ kind: 'as-it-was' }))).toBe(
      'Not on this phone: comes back as it was, 2 recordings.',
    )
    const way: Way = { kind: 'add', missing: ['a'], undelete: ['b', 'c'], gestures: 0 }
    expect(waySentence(planned(way))).toBe(
      'On this phone: 1 recording missing here and 2 recordings deleted here come back. What is here stays as it is.',
    )
    expect(waySentence(planned({ kind: 'nothing' }, 1))).toBe(
      'All of it is on this phone: nothing to do. 1 recording withdrawn or dropped here stays out.',
    )
  })

  it('name a lost recording', () => {
    expect(lostLine({ gesture: null, tester: 'A1', file: 'background/A1_001.csv' })).toBe(
      'Background by A1 (background/A1_001.csv)',
    )
  })
})
