import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Collection,
  type Identified,
  mergeCollections,
  withoutWithdrawn,
} from '../../../src/shared/collect/collection'
import { changeLabels, labelsOf } from '../../../src/shared/collect/history'
import type { LabelValues } from '../../../src/shared/collect/labels'
import type { Withdrawal } from '../../../src/shared/collect/withdrawal'
import { take } from '../format/sample-library'
import { sampleSession } from './samples'

const CASES = 10_000
const DEVICES = 4

/** Something that happens on one of the devices, or between two. */
type Act =
  | { kind: 'session'; device: number; tester: number; takes: number }
  | { kind: 'label'; device: number; pick: number; change: Partial<LabelValues>; minute: number }
  | { kind: 'withdraw'; device: number; pick: number; what: Withdrawal['kind']; minute: number }
  | { kind: 'bring'; device: number; from: number }

const device = fc.nat(DEVICES - 1)
const change: fc.Arbitrary<Partial<LabelValues>> = fc.oneof(
  fc.record({ gestureId: fc.constantFrom('raise', 'ring', 'pour') }),
  fc.record({ hand: fc.constantFrom('left' as const, 'right' as const) }),
  fc.record({ trim: fc.constantFrom(null, { startMs: 10, endMs: 900 }) }),
  fc.record({ note: fc.constantFrom('', 'low'), testerCode: fc.constantFrom('K7Q4MXA', 'A1') }),
)
const acts: fc.Arbitrary<Act[]> = fc.array(
  fc.oneof(
    {
      weight: 3,
      arbitrary: fc.record({
        kind: fc.constant('session' as const),
        device,
        tester: fc.nat(2),
        takes: fc.integer({ min: 1, max: 3 }),
      }),
    },
    // Clocks of devices are wrong: minutes come in any order.
    {
      weight: 4,
      arbitrary: fc.record({
        kind: fc.constant('label' as const),
        device,
        pick: fc.nat(9),
        change,
        minute: fc.nat(5),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        kind: fc.constant('withdraw' as const),
        device,
        pick: fc.nat(9),
        what: fc.constantFrom('tester' as const, 'session' as const, 'content' as const),
        minute: fc.nat(5),
      }),
    },
    {
      weight: 3,
      arbitrary: fc.record({ kind: fc.constant('bring' as const), device, from: device }),
    },
  ),
  { minLength: 2, maxLength: 14 },
)

const hex = (seed: number, length: number) => seed.toString(16).padStart(length, '0')
const instant = (minute: number) => `2026-11-25T19:0${minute}:00Z`

/** What each device holds after a history of acts. */
function devicesAfter(history: Act[]): Collection[] {
  const devices: Collection[] = Array.from({ length: DEVICES }, () => ({
    sessions: [],
    withdrawals: [],
    recordings: [],
  }))
  let drawn = 0
  for (const act of history) {
    const own = devices[act.device]!
    if (act.kind === 'session') devices[act.device] = perform(own, act, () => ++drawn)
    else if (act.kind === 'bring') {
      devices[act.device] = mergeCollections(own, devices[act.from]!)
    } else if (own.recordings.length > 0) {
      const at = act.pick % own.recordings.length
      const recording = own.recordings[at]!
      if (act.kind === 'withdraw') devices[act.device] = withdraw(own, recording, act)
      else {
        const recordings = [...own.recordings]
        recordings[at] = changeLabels(recording, act.change, instant(act.minute), () =>
          hex(++drawn, 32),
        )
        devices[act.device] = { ...own, recordings }
      }
    }
  }
  return devices
}

function perform(
  own: Collection,
  { tester, takes }: { tester: number; takes: number },
  draw: () => number,
): Collection {
  const id = hex(draw(), 32)
  const session = sampleSession({ id, testerKey: `f${hex(tester, 31)}`, testerCode: `T${tester}` })
  const recordings = Array.from({ length: takes }, (): Identified => {
    const n = draw()
    const facts = take(`take-${n}`, n % 2 === 0 ? 'raise' : 'ring', session.testerCode)
    return { ...facts, sessionId: id, contentId: hex(n, 64) }
  })
  return mergeCollections(own, { sessions: [session], withdrawals: [], recordings })
}

function withdraw(
  own: Collection,
  { contentId, sessionId = '' }: Identified,
  { what, minute }: { what: Withdrawal['kind']; minute: number },
): Collection {
  const testerKey = own.sessions.find(({ id }) => id === sessionId)?.testerKey ?? ''
  const key = { tester: testerKey, session: sessionId, content: contentId }[what]
  const withdrawal: Withdrawal = {
    kind: what,
    key,
    why: 'withdrawn',
    testerCode: 'T',
    at: instant(minute),
  }
  return withoutWithdrawn({ ...own, withdrawals: [...own.withdrawals, withdrawal] })
}

/** Without the ids and the order, which mean nothing elsewhere. */
function shown({ sessions, withdrawals, recordings }: Collection) {
  const facts = recordings.map(({ id: _, ...rest }) => rest)
  facts.sort((a, b) => (a.contentId < b.contentId ? -1 : 1))
  return { sessions, withdrawals, recordings: facts }
}

function holds(numRuns: number, property: (devices: Collection[]) => void): void {
  fc.assert(
    fc.property(acts, (history) => property(devicesAfter(history))),
    { numRuns },
  )
}

describe('a merge of collections, over random histories on four devices', () => {
  test(`is commutative, associative and idempotent in ${CASES} of them`, () => {
    holds(CASES, ([a, b, c]) => {
      const once = mergeCollections(a!, b!)
      expect(shown(mergeCollections(b!, a!))).toEqual(shown(once))
      expect(shown(mergeCollections(a!, mergeCollections(b!, c!)))).toEqual(
        shown(mergeCollections(once, c!)),
      )
      expect(shown(mergeCollections(once, b!))).toEqual(shown(once))
      expect(shown(mergeCollections(once, once))).toEqual(shown(once))
    })
  })

  test('loses no recording that nobody withdrew, doubles none, and brings back none', () => {
    holds(2_000, (devices) => {
      const all = devices.reduce(mergeCollections)
      const ids = all.recordings.map((one) => one.contentId)
      expect(new Set(ids).size).toBe(ids.length)
      const kept = new Set(ids)
      const gone = new Set(all.withdrawals.map(({ key }) => key))
      const testers = new Map(
        devices.flatMap(({ sessions }) => sessions.map((one) => [one.id, one.testerKey] as const)),
      )
      for (const { contentId, sessionId = '' } of devices.flatMap((one) => one.recordings)) {
        const isGone = [contentId, sessionId, testers.get(sessionId) ?? ''].some((key) =>
          gone.has(key),
        )
        expect(kept.has(contentId)).toBe(!isGone)
      }
    })
  })
})

test('labels changed one after the other lead to the last, whatever the clocks say', () => {
  const recording: Identified = { ...take('t', 'raise', 'A1'), contentId: hex(1, 64) }
  const collection = (one: Identified): Collection => ({
    sessions: [],
    withdrawals: [],
    recordings: [one],
  })
  const first = changeLabels(recording, { gestureId: 'pour' }, instant(9), () => hex(1, 32))
  const second = changeLabels(first, { gestureId: 'ring' }, instant(1), () => hex(2, 32))
  for (const [one, other] of [
    [recording, second],
    [second, first],
  ] as const) {
    const [merged] = mergeCollections(collection(one), collection(other)).recordings
    expect(labelsOf(merged!).gestureId).toBe('ring')
  }
})
