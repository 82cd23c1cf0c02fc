import { describe, expect, test } from 'vitest'
import type { Collection } from '../../../src/shared/collect/collection'
import { incomingSession } from '../../../src/shared/collect/incoming'
import { type Marks, markOf, recall, withRecalled } from '../../../src/shared/collect/marks'
import type { Withdrawal } from '../../../src/shared/collect/withdrawal'
import { sampleSessionFile } from './samples'

const AT = '2026-11-25T20:00:00Z'
const file = sampleSessionFile(3)
const { collection } = incomingSession('session.zip', file)
const { id, testerKey, testerCode } = file.session
const content = collection.recordings[1]!.contentId
const nothing: Collection = { sessions: [], withdrawals: [], recordings: [] }

const marksOf = (...named: Pick<Withdrawal, 'kind' | 'key'>[]): Marks =>
  new Map(named.map((one) => [markOf('parade', one), 'withdrawn']))

describe('marks of withdrawals', () => {
  test.each([
    ['tester', testerKey],
    ['session', id],
    ['content', content],
  ] as const)('remember a %s by what a file holds of it', (kind, key) => {
    const recalled = recall(marksOf({ kind, key }), 'parade', collection, AT)
    expect(recalled).toEqual([{ kind, key, why: 'withdrawn', testerCode, at: AT }])
  })

  test('say nothing of whom or what: digests that differ from library to library', () => {
    const mark = markOf('parade', { kind: 'tester', key: testerKey })
    expect(mark).toMatch(/^[0-9a-f]{64}$/)
    expect(mark).not.toContain(testerKey)
    expect(markOf('rehearsal', { kind: 'tester', key: testerKey })).not.toBe(mark)
    expect(recall(new Map([[mark, 'withdrawn']]), 'rehearsal', collection, AT)).toEqual([])
  })

  test('say whether a take was only dropped', () => {
    const marks: Marks = new Map([[markOf('parade', { kind: 'content', key: content }), 'dropped']])
    expect(recall(marks, 'parade', collection, AT)).toMatchObject([{ why: 'dropped' }])
  })

  test('remember a session of which a file holds recordings alone', () => {
    const recordings = { ...collection, sessions: [] }
    expect(recall(marksOf({ kind: 'session', key: id }), 'parade', recordings, AT)).toHaveLength(1)
  })

  test('take nothing away that is here, and repeat nothing that is remembered here', () => {
    const marks = marksOf({ kind: 'content', key: content }, { kind: 'session', key: id })
    const both = withRecalled(nothing, [collection], marks, 'parade', AT)
    expect(both.withdrawals).toHaveLength(2)
    expect(withRecalled(collection, [collection], marks, 'parade', AT)).toEqual(collection)
    expect(withRecalled(both, [collection], marks, 'parade', '2027-01-01T00:00:00Z')).toEqual(both)
  })
})
