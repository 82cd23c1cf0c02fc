import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'
import { decideData } from '../../../src/shared/decide/decide-data'
import { decideGestures } from '../../../src/shared/decide/decide-gestures'
import { decideSensor } from '../../../src/shared/decide/decide-sensor'
import {
  isDataDecision,
  isGestureDecision,
  isSensorDecision,
} from '../../../src/shared/format/decide-schema'
import type { FullLibrary } from '../../../src/shared/model/library'
import type { Result } from '../../../src/shared/model/result'
import { dataSentence, missingCurve } from '../../../src/shared/words/en/data-words'
import { gesturesBasis, gesturesSentence } from '../../../src/shared/words/en/pair-words'
import { gyroSentence, limitSentences } from '../../../src/shared/words/en/sensor-words'
import { tinyLibrary } from '../training/tiny-library'

let core: Core

beforeAll(async () => {
  core = await loadCoreForNode()
})

function valueOrThrow<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.message)
  return result.value
}

/** As it comes back from storage: a copy of plain data. */
const stored = (value: unknown): unknown => structuredClone(value)

function only(full: FullLibrary, wanted: (gesture: string, tester: string) => boolean) {
  const recordings = full.recordings.filter(
    ({ recording }) =>
      recording.kind !== 'take' || wanted(recording.gestureId, recording.testerCode),
  )
  return { ...full, recordings }
}

describe('which gestures', () => {
  it('finds turns about three axes well apart by the gyroscope alone, says on what it rests, and can be kept', async () => {
    const decision = valueOrThrow(await decideGestures(core, tinyLibrary()))
    expect(decision.pairs).toHaveLength(3)
    expect(decision.pairs.map(({ told }) => told.recogniser?.n)).toEqual([24, 24, 24])
    for (const { told, margin } of decision.pairs) {
      expect(told.recogniser?.value).toBeGreaterThan(0.9)
      expect(margin.low).toBeGreaterThan(0)
    }
    expect(decision.subsets.map(({ members, proven }) => [members.length, proven])).toEqual([
      [2, true],
      [3, true],
    ])
    expect(decision.subsets[1]?.unseen.n).toBe(36)
    expect(decision.pairs.map(({ advice }) => advice)).toEqual(['gyro', 'gyro', 'gyro'])
    expect(gesturesSentence(decision)).toContain('told apart by only the gyroscope')
    expect(gesturesBasis(decision)).toContain('3 testers')
    expect(isGestureDecision(stored(decision))).toBe(true)
    expect(isGestureDecision({ ...decision, profiles: [{ gesture: 0 }] })).toBe(false)
  })

  it('with one tester holds out takes and says that a new hand will do worse', async () => {
    const one = only(tinyLibrary(), (_, tester) => tester === 'T0')
    const decision = valueOrThrow(await decideGestures(core, one))
    expect(decision.holdout).toBe('take')
    expect(gesturesBasis(decision)).toContain('a new hand will do worse')
    expect(decision.subsets.at(-1)?.unseen.n).toBe(0)
  })

  it('with one gesture says that there is nothing to tell apart, and what to record', async () => {
    const one = only(tinyLibrary(), (gesture) => gesture === 'nod')
    const result = await decideGestures(core, one)
    expect(result).toMatchObject({ ok: false, code: 'decide/one-gesture' })
    expect(!result.ok && result.message).toContain('record takes of a second gesture')
  })
})

describe('how much data', () => {
  it('draws curves that end with everything, the same for the same seed', async () => {
    const full = tinyLibrary({ testers: 4, takesEach: 3, backgroundS: 20 })
    const options = { draws: 2, rounds: 2 }
    const data = valueOrThrow(await decideData(core, full, undefined, options))
    expect(data.takes?.points.map(({ count }) => count)).toEqual([1, 2, 3])
    expect(data.byTesters?.points.map(({ count, draws }) => [count, draws])).toEqual([
      [1, 2],
      [2, 2],
      [3, 1],
    ])
    for (const { rate, least, most } of data.takes?.points ?? []) {
      expect(rate.n).toBe(18)
      expect(rate.low).toBeLessThanOrEqual(rate.value)
      expect(least).toBeLessThanOrEqual(most)
    }
    expect(data.takes?.points.at(-1)?.rate).toEqual(data.byTesters?.points.at(-1)?.rate)
    expect(data.background?.hours).toBeGreaterThan(0)
    expect(isDataDecision(stored(data))).toBe(true)
    expect(valueOrThrow(await decideData(core, full, undefined, options))).toEqual(data)
  })

  it('with one tester asks for another one before anything else', async () => {
    const one = only(tinyLibrary(), (_, tester) => tester === 'T0')
    const data = valueOrThrow(await decideData(core, one, undefined, { draws: 1 }))
    expect(data.byTesters).toBeNull()
    expect(dataSentence(data)).toContain('a second tester is worth most')
    expect(missingCurve('tester', data)).toContain('Ask two more')
  })
})

describe('which sensor', () => {
  it('compares every setting with the own one on the same takes, and tries no rate beyond the recordings', async () => {
    const decision = valueOrThrow(
      await decideSensor(core, tinyLibrary(), undefined, { axes: ['rate', 'range'] }),
    )
    const { own, results, limits } = decision
    expect(own.loss).toMatchObject({ onlyFirst: 0, onlySecond: 0, n: 36 })
    expect(results.map(({ axis, setting }) => [axis, setting.rateHz, setting.rangeG])).toEqual([
      ['rate', 12.5, 8],
      ['rate', 26, 8],
      ['range', 52, 2],
      ['range', 52, 4],
      ['range', 52, 16],
    ])
    for (const { loss, accuracy } of results) {
      const lost = own.accuracy.hits - accuracy.hits
      expect(loss.onlyFirst - loss.onlySecond).toBe(lost)
      expect(loss.low).toBeLessThanOrEqual(loss.value)
    }
    expect(limits.untriedHz).toEqual([104, 208])
    expect(limitSentences(limits, decision).join(' ')).toContain(
      '104 and 208\u202fHz were not tried',
    )
    const faster = { ...decision, own: { ...own, setting: { ...own.setting, rateHz: 104 } } }
    expect(limitSentences(limits, faster)[0]).toContain('own 104\u202fHz are beyond that too')
    // 36 takes can never bound a loss below 2 points: z² / (36 + z²) is 9.6 %.
    expect(decision.cheapest.axis).toBe('own')
    expect(isSensorDecision(stored(decision))).toBe(true)
  })

  it('says that takes without a gyroscope cannot tell what it adds', async () => {
    const full = tinyLibrary()
    for (const { recording } of full.recordings)
      recording.device = { ...recording.device, hasGyro: false }
    const decision = valueOrThrow(await decideSensor(core, full, undefined, { axes: ['gyro'] }))
    expect(decision.results).toEqual([])
    expect(gyroSentence(decision)).toContain('36 takes came without a gyroscope')
    expect(gyroSentence(decision)).toContain('record with a phone that has one')
  })

  it('with one gesture says that no sensor can confuse it', async () => {
    const one = only(tinyLibrary(), (gesture) => gesture === 'nod')
    expect(await decideSensor(core, one)).toMatchObject({ ok: false, code: 'decide/one-gesture' })
  })
})
