import { describe, expect, test } from 'vitest'
import type { SensorSetting } from '../../../src/shared/decide/sensor-decision'
import { sensorLimits } from '../../../src/shared/decide/sensor-limits'
import { settingResult, verdictOn } from '../../../src/shared/decide/setting-result'
import { ownSetting, settle } from '../../../src/shared/decide/settle'
import { accelerometerModel } from '../../../src/shared/decide/without-gyro'
import { pairedLoss } from '../../../src/shared/statistics/paired'
import { standardDeviation } from '../../../src/shared/statistics/summary'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { cuttingModel } from '../../../src/shared/training/cutting-model'
import { tinyLibrary } from '../training/tiny-library'

const full = tinyLibrary()
const target = defaultTarget()
const own = ownSetting(target)
const plain = settle(full, own, 1)

function countsWith(change: Partial<SensorSetting>) {
  return settle(full, { ...own, ...change }, 1)
}

describe('a setting of the sweep', () => {
  test('without a change gives the counts that training gets', () => {
    expect(countsWith({}).takes[0]?.counts).toEqual(plain.takes[0]?.counts)
  })

  test('with fewer bits gives whole steps, nowhere more than half a step away', () => {
    const coarse = countsWith({ bits: 10 }).takes[0]!.counts
    const fine = plain.takes[0]!.counts
    expect(coarse.every((value) => value % 64 === 0)).toBe(true)
    expect(Math.max(...coarse.map((value, at) => Math.abs(value - fine[at]!)))).toBeLessThanOrEqual(
      32,
    )
  })

  test('adds white noise of the density over half the rate, the same for the same seed', () => {
    const noisy = countsWith({ accelNoise: 1000, gyroNoise: 50 })
    const differences = noisy.takes.flatMap(({ counts }, i) =>
      [...counts].map((value, at) => value - plain.takes[i]!.counts[at]!),
    )
    const of = (axis: number) => differences.filter((_, at) => at % 6 === axis)
    // 1000 µg/√Hz over 26 Hz is 5.099 mg; a count is 0.244 mg. 50 mdeg/s over 26 Hz is 0.255 deg/s.
    expect(standardDeviation(of(0))).toBeCloseTo(5.099 / 0.244, 0)
    expect(standardDeviation(of(4))).toBeCloseTo(0.25495 / 0.035, 0)
    expect(countsWith({ accelNoise: 1000, gyroNoise: 50 }).takes[3]?.counts).toEqual(
      noisy.takes[3]?.counts,
    )
  })

  test('of a smaller range has finer counts and clips what is beyond', () => {
    const narrow = countsWith({ rangeG: 2 })
    expect(narrow.target.accel).toEqual({ fullScale: 2, nanoPerLsb: 61_000 })
    const at = 2
    const ratio = narrow.takes[0]!.counts[at]! / plain.takes[0]!.counts[at]!
    expect(ratio).toBeCloseTo(4, 2)
  })

  test('without the gyroscope has a still one, and a model of half the tables', () => {
    const alone = countsWith({ gyro: false })
    expect(alone.takes[0]!.counts.every((value, at) => at % 6 < 3 || value === 0)).toBe(true)
    const model = cuttingModel(target)
    model.gestures[0]!.templates = [Int8Array.from({ length: 48 }, (_, i) => (i % 6 < 3 ? i : 0))]
    const halved = accelerometerModel(model)
    expect([...halved.gestures[0]!.templates[0]!]).toEqual(
      Array.from({ length: 48 }, (_, i) => i).filter((i) => i % 6 < 3),
    )
    expect(halved.normaliser.channelMask).toBe(0b111)
  })
})

describe('the verdict on a setting', () => {
  test('is enough only with the whole interval below the tolerance, worse only above nought', () => {
    expect(verdictOn(pairedLoss(0, 0, 188), 0.02)).toBe('open')
    expect(verdictOn(pairedLoss(0, 0, 189), 0.02)).toBe('enough')
    expect(verdictOn(pairedLoss(20, 2, 300), 0.02)).toBe('worse')
    expect(verdictOn(pairedLoss(6, 2, 300), 0.02)).toBe('open')
  })

  test('counts flips take by take and says how many takes would settle an open one', () => {
    const value = (right: (i: number) => boolean) => ({
      answers: Array.from({ length: 100 }, (_, i) => ({
        takeId: `${i}`,
        tester: `T${i % 4}`,
        right: right(i),
      })),
      background: { samples: 0, activations: 0, segments: 0, acceptedFrom: [] },
      rateHz: 52,
      clipped: [],
      flashBytes: 1,
      ramBytes: 1,
      decisionMs: 1,
    })
    const before = value((i) => i >= 2)
    const after = value((i) => i === 0 || i >= 3)
    const result = settingResult(own, 'bits', after, before, 0.02)
    expect(result.loss).toMatchObject({ onlyFirst: 1, onlySecond: 1, n: 100, value: 0 })
    expect(result.verdict).toBe('open')
    // Over testers: n · error² = 100 · (4/3 · 2 / 100²) = 0.0267, and 1.96² · 0.0267 / 0.02² = 256.1.
    expect(result.takesNeeded).toBe(257)
    const oneTester = (one: typeof after) => ({
      ...one,
      answers: one.answers.map((answer) => ({ ...answer, tester: 'T0' })),
    })
    // Over takes: 1.96² · 0.02 / 0.02² = 192.
    expect(settingResult(own, 'bits', oneTester(after), before, 0.02).takesNeeded).toBe(193)
    expect(result.background).toBeNull()
  })
})

describe('what recordings cannot answer', () => {
  test('is told from their rate, their largest reading and their rounding', () => {
    const limits = sensorLimits(full)
    expect(limits.recordedHz).toBeCloseTo(60, 6)
    expect(limits.contentHz).toBeCloseTo(30, 6)
    expect(limits.untriedHz).toEqual([104, 208])
    expect(limits.floorNoise).toBeNull()
    expect(limits.phoneClipG).toBeNull()
  })

  test('a step of 0.1 m/s² at 60 Hz is noise of 537 µg/√Hz', () => {
    const stepped = tinyLibrary()
    for (const { recording } of stepped.recordings)
      recording.device = { ...recording.device, accelStepMps2: 0.1 }
    // check value: 2.944 mg rms, over √30 Hz.
    expect(sensorLimits(stepped).floorNoise).toBeCloseTo(2944 / Math.sqrt(30), 0)
  })

  test('several takes that stand still at one extreme show the range of the recording sensor', () => {
    const clipped = tinyLibrary()
    for (const { samples } of clipped.recordings.slice(0, 3))
      for (const row of [40, 41, 42]) samples.values[row * 6] = 39.2
    expect(sensorLimits(clipped).phoneClipG).toBeCloseTo(4, 2)
  })
})
