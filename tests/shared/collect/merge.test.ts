import { describe, expect, test } from 'vitest'
import type { Identified } from '../../../src/shared/collect/collection'
import { contentId } from '../../../src/shared/collect/content-id'
import { changeLabels } from '../../../src/shared/collect/history'
import {
  incomingLibrary,
  incomingSession,
  matchGestures,
} from '../../../src/shared/collect/incoming'
import { mapGestures } from '../../../src/shared/collect/map-gestures'
import {
  collectionOf,
  conflictKey,
  type Merge,
  planMerge,
  settleMerge,
} from '../../../src/shared/collect/merge'
import { apart, sharedCodes } from '../../../src/shared/collect/same-code'
import type { SessionFile } from '../../../src/shared/collect/session'
import { readSessionFile, writeSessionFile } from '../../../src/shared/collect/session-file'
import { readLibraryFile, writeLibraryFile } from '../../../src/shared/format/library-file'
import type { FullLibrary, Library } from '../../../src/shared/model/library'
import type { SampleBlock } from '../../../src/shared/model/sample'
import { sampleLibrary } from '../format/sample-library'
import { sampleSessionFile } from './samples'

const AT = '2026-11-25T20:00:00Z'
let drawn = 0
const newId = () => (++drawn).toString(16).padStart(32, '0')

/** A library on a desk, and what was merged into it. */
class Desk {
  library: Library = { ...sampleLibrary().library }
  recordings: Identified[] = []
  readonly samples = new Map<string, SampleBlock>()

  plan(...files: SessionFile[]): Merge {
    return planMerge(
      this.collection(),
      files.map((file) => this.incoming(file)),
    )
  }

  incoming(file: SessionFile) {
    const { collection, samples } = incomingSession('a.zip', file)
    for (const [id, block] of samples) this.samples.set(id, block)
    return collection
  }

  collection() {
    return collectionOf(this.library, this.recordings)
  }

  agree(merge: Merge, decided = new Map()): void {
    const { library, recordings } = this
    const change = settleMerge(
      { library, own: recordings },
      merge,
      this.samples,
      decided,
      AT,
      newId,
    )
    this.library = change.library
    const updated = new Map(change.update.map((one) => [one.id, one]))
    this.recordings = [
      ...recordings
        .filter(({ id }) => !change.remove.includes(id))
        .map((one) => updated.get(one.id) ?? one),
      ...change.add.map(({ recording }) => recording as Identified),
    ]
  }

  relabel(index: number, gestureId: string): void {
    const recording = this.recordings[index]!
    this.recordings[index] = changeLabels(recording, { gestureId }, AT, newId)
  }
}

const copyOf = (file: SessionFile): SessionFile => {
  const read = readSessionFile(writeSessionFile(file))
  if (!read.ok) throw new Error(read.message)
  return read.value
}

describe('bringing a session home', () => {
  test('adds all of it once, under new ids, and tells how many', () => {
    const desk = new Desk()
    const merge = desk.plan(copyOf(sampleSessionFile(4)))
    expect([merge.added.length, merge.knownCount, merge.conflicts]).toEqual([5, 0, []])
    desk.agree(merge)
    expect(desk.recordings).toHaveLength(5)
    expect(desk.library.sessions).toHaveLength(1)
    expect(desk.recordings.every(({ libraryId }) => libraryId === desk.library.id)).toBe(true)
  })

  test('twice, by two ways and after labels were edited, gives no doubles and keeps the edits', () => {
    const desk = new Desk()
    const sent = sampleSessionFile(4)
    desk.agree(desk.plan(copyOf(sent)))
    desk.relabel(0, 'ring')
    const before = desk.recordings
    const merge = desk.plan(copyOf(sent), sent)
    expect([merge.added.length, merge.knownCount]).toEqual([0, 5])
    expect([merge.conflicts, merge.relabelled, merge.leaving]).toEqual([[], [], []])
    desk.agree(merge)
    expect(desk.recordings).toEqual(before)
  })

  test('that was merged already asks storage to change nothing', () => {
    const desk = new Desk()
    desk.agree(desk.plan(sampleSessionFile(4)))
    desk.relabel(1, 'raise')
    const merge = desk.plan(sampleSessionFile(4))
    const { library, recordings: own } = desk
    const change = settleMerge({ library, own }, merge, desk.samples, new Map(), AT, newId)
    expect([change.add, change.update, change.remove]).toEqual([[], [], []])
  })

  test('takes over a label that was changed later on the other side, and lists it', () => {
    const desk = new Desk()
    const sent = sampleSessionFile(4)
    desk.agree(desk.plan(sent))
    const other = new Desk()
    other.agree(other.plan(sent))
    other.relabel(0, 'ring')
    const merge = planMerge(desk.collection(), [other.collection()])
    expect(merge.relabelled.map((one) => one.kind === 'take' && one.gestureId)).toEqual(['ring'])
    expect(merge.conflicts).toEqual([])
  })

  test('shows labels that were changed apart, keeps both until decided, and the decision travels', () => {
    const sent = sampleSessionFile(4)
    const desk = new Desk()
    desk.agree(desk.plan(sent))
    desk.library = {
      ...desk.library,
      gestures: [...desk.library.gestures, { id: 'pour', name: 'Pour', note: '' }],
    }
    const other = new Desk()
    other.agree(other.plan(sent))
    desk.relabel(0, 'ring')
    other.relabel(0, 'pour')
    const merge = planMerge(desk.collection(), [other.collection()])
    expect(merge.conflicts).toHaveLength(1)
    const [conflict] = merge.conflicts
    expect(conflict!.choices.map(({ value }) => value).sort()).toEqual(['pour', 'ring'])
    const pour = conflict!.choices.find(({ value }) => value === 'pour')!
    desk.agree(merge, new Map([[conflictKey(conflict!), pour]]))
    expect(desk.recordings.map((one) => one.kind === 'take' && one.gestureId)).toContain('pour')
    const back = planMerge(other.collection(), [desk.collection()])
    expect(back.conflicts).toEqual([])
    expect(planMerge(desk.collection(), [other.collection()]).conflicts).toEqual([])
  })

  test('tells two testers apart who were given one code, whichever comes first', () => {
    const one = sampleSessionFile(2, { id: '1'.repeat(32), testerKey: '1'.repeat(32) }, 1)
    const other = sampleSessionFile(
      2,
      { id: '2'.repeat(32), testerKey: '2'.repeat(32), startedAt: '2026-11-25T19:00:00Z' },
      2,
    )
    const shown = [
      [one, other],
      [other, one],
    ].map((files) => {
      const desk = new Desk()
      for (const file of files) desk.agree(desk.plan(file))
      return new Map(desk.recordings.map((r) => [r.sessionId, r.testerCode]))
    })
    expect(shown[0]!.get(one.session.id)).toBe('K7Q4MXA')
    expect(shown[0]!.get(other.session.id)).toBe('K7Q4MXA-2222')
    expect([...shown[1]!].sort()).toEqual([...shown[0]!].sort())
  })

  test('two testers with one code are named in the report', () => {
    const desk = new Desk()
    desk.agree(desk.plan(sampleSessionFile(2)))
    const other = sampleSessionFile(2, { id: '2'.repeat(32), testerKey: 'c'.repeat(32) }, 2)
    expect(desk.plan(other).renamed).toEqual([{ code: 'K7Q4MXA', shownAs: 'K7Q4MXA-cccc' }])
  })

  test('of a tester who withdrew stays out, and takes the copy of another desk with it', () => {
    const sent = sampleSessionFile(4)
    const [desk, other] = [new Desk(), new Desk()]
    desk.agree(desk.plan(sent))
    other.agree(other.plan(sent))
    desk.library = {
      ...desk.library,
      withdrawals: [
        { kind: 'tester', key: sent.session.testerKey, why: 'withdrawn', testerCode: 'K', at: AT },
      ],
      sessions: [],
    }
    desk.recordings = []
    expect(desk.plan(sent).keptOut).toEqual({ withdrawn: 5, dropped: 0 })
    const merge = planMerge(other.collection(), [desk.collection()])
    expect(merge.leaving).toHaveLength(5)
    other.agree(merge)
    expect(other.recordings).toEqual([])
    expect(other.plan(sent).added).toEqual([])
  })

  test('does not bring back a take that was dropped', () => {
    const sent = sampleSessionFile(4)
    const desk = new Desk()
    desk.agree(desk.plan(sent))
    const [dropped] = desk.recordings
    desk.recordings = desk.recordings.slice(1)
    const { contentId: key, testerCode } = dropped!
    desk.library = {
      ...desk.library,
      withdrawals: [{ kind: 'content', key, why: 'dropped', testerCode, at: AT }],
    }
    expect(desk.plan(sent).keptOut).toEqual({ withdrawn: 0, dropped: 1 })
  })
})

describe('bringing a library in', () => {
  const renamed = (full: FullLibrary): FullLibrary => ({
    ...full,
    library: {
      ...full.library,
      gestures: full.library.gestures.map((one) => ({ ...one, id: `other-${one.id}` })),
    },
    recordings: full.recordings.map(({ recording, samples }) => ({
      recording:
        recording.kind === 'take'
          ? { ...recording, gestureId: `other-${recording.gestureId}` }
          : recording,
      samples,
    })),
  })
  const distinct = (): FullLibrary => {
    const full = sampleLibrary()
    for (const [n, { samples }] of full.recordings.entries()) samples.values[0] = n
    return full
  }

  test('finds gestures by name where ids differ, and doubles nothing', () => {
    const desk = new Desk()
    const full = distinct()
    desk.recordings = full.recordings.map(({ recording, samples }) => ({
      ...recording,
      contentId: contentId(samples),
    }))
    const read = readLibraryFile(writeLibraryFile(renamed(full)))
    if (!read.ok) throw new Error(read.message)
    const incoming = incomingLibrary('b.zip', read.value)
    const matched = matchGestures(desk.library.gestures, incoming.gestures)
    expect([...matched]).toEqual([
      ['other-raise', 'raise'],
      ['other-ring', 'ring'],
    ])
    const mapped = mapGestures(incoming.collection, (id) => matched.get(id) ?? id)
    const merge = planMerge(desk.collection(), [mapped])
    expect([merge.added, merge.knownCount, merge.conflicts]).toEqual([[], 4, []])
  })

  test('keeps two people apart to whom two desks gave one code by hand', () => {
    const desk = new Desk()
    const full = distinct()
    desk.recordings = full.recordings.map(({ recording, samples }) => ({
      ...recording,
      contentId: contentId(samples),
    }))
    const other = distinct()
    for (const { samples } of other.recordings) samples.values[1] = 77
    const theirs = incomingLibrary('b.zip', other).collection
    expect(sharedCodes(desk.collection(), theirs)).toEqual(['A1', 'B 2'])
    const codes = desk.recordings.map(({ testerCode }) => testerCode)
    const merge = planMerge(desk.collection(), [apart(theirs, ['A1', 'B 2'], codes, AT, newId)])
    expect(new Set(merge.merged.recordings.map(({ testerCode }) => testerCode))).toEqual(
      new Set(['A1', 'B 2', 'A1-2', 'B 2-2']),
    )
  })

  test('takes a code for one person’s where both hold a recording of it', () => {
    const desk = new Desk()
    const full = distinct()
    desk.recordings = full.recordings.map(({ recording, samples }) => ({
      ...recording,
      contentId: contentId(samples),
    }))
    expect(sharedCodes(desk.collection(), incomingLibrary('b.zip', full).collection)).toEqual([])
  })
})
