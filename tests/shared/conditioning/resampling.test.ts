import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { conditionRecording } from '../../../src/shared/conditioning/condition-recording'
import { Resampler } from '../../../src/shared/conditioning/resampler'
import { StreamConditioner } from '../../../src/shared/conditioning/stream-conditioner'
import { contentLimitHz, findGaps, timingFacts } from '../../../src/shared/conditioning/timing'
import { createRandom } from '../../../src/shared/statistics/random'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { axisOf, evenTimes, rows, sampled } from './samples'

/** Resampled first axis of a function of seconds, with the time of each output. */
function resample(tMs: number[], rateHz: number, f: (seconds: number) => number) {
  const values: number[] = []
  const resampler = new Resampler(rateHz, (row) => values.push(row[0]!))
  for (const t of tMs) resampler.push(t, [f(t / 1000), 0, 0, 0, 0, 0])
  resampler.flush()
  return { values, seconds: values.map((_, k) => resampler.timeOfMs(k) / 1000), resampler }
}

/** Amplitude of a sine of f Hz in the middle half of the output, by projection. */
function amplitude(f: number, out: { values: number[]; seconds: number[] }): number {
  const from = Math.floor(out.values.length / 4)
  const to = 3 * from
  let re = 0
  let im = 0
  for (let k = from; k < to; k++) {
    re += out.values[k]! * Math.cos(2 * Math.PI * f * out.seconds[k]!)
    im += out.values[k]! * Math.sin(2 * Math.PI * f * out.seconds[k]!)
  }
  return (2 * Math.hypot(re, im)) / (to - from)
}

const sine = (f: number) => (t: number) => Math.sin(2 * Math.PI * f * t)

/** The made-up times of a phone: 60 Hz, ±2 ms of jitter, a burst now and then. */
function phoneTimes(seconds: number, seed: number): number[] {
  const random = createRandom(seed)
  let previous = 0
  return evenTimes(60, seconds).map((t) => {
    const late = random.next() < 0.05 ? 12 : 0
    previous = Math.max(previous, t + random.uniform(-2, 2) + late)
    return previous
  })
}

describe('interpolation', () => {
  test('straight lines come out as they went in, whatever the times', () => {
    const line = (t: number) => 3 - 5 * t
    for (const rateHz of [12.5, 52, 100, 400]) {
      const { values, seconds } = resample(phoneTimes(2, 5), rateHz, line)
      for (const [k, t] of seconds.entries()) {
        if (t > 0.15 && t < 1.8) expect(values[k]).toBeCloseTo(line(t), 9)
      }
    }
  })

  test('a constant stays that constant to the last output', () => {
    const { values } = resample(phoneTimes(2, 1), 104, () => 7.25)
    for (const value of values) expect(value).toBeCloseTo(7.25, 12)
  })

  test.each([
    // Worst case of linear interpolation of a unit sine: 1 - cos(π f / fs).
    [1, 50, 0.001973],
    [1, 60, 0.00137],
    [5, 60, 0.034074],
    [10, 60, 0.133975],
    [5, 100, 0.012312],
  ])('%i Hz from %i Hz is off by no more than %f, the bound of straight lines', (f, fs, bound) => {
    // At 400 Hz out the kernel itself takes off less than (2π f / 400)² / 24.
    const out = resample(evenTimes(fs, 3), 400, sine(f))
    const slack = (2 * Math.PI * f * (1 / 400)) ** 2 / 24
    const middle = out.seconds.map((t, k) => ({ t, error: Math.abs(out.values[k]! - sine(f)(t)) }))
    const worst = Math.max(...middle.filter(({ t }) => t > 0.1 && t < 2.9).map((m) => m.error))
    expect(worst).toBeLessThan(bound + slack)
    expect(worst).toBeGreaterThan(bound / 2)
  })

  test('a movement is not shifted in time: a symmetric bump keeps its middle', () => {
    const bump = (t: number) => Math.exp(-(((t - 1) / 0.15) ** 2))
    for (const rateHz of [25, 52, 208]) {
      const { values, seconds } = resample(evenTimes(60, 2), rateHz, bump)
      const weight = values.reduce((sum, v) => sum + v, 0)
      const middle = values.reduce((sum, v, k) => sum + v * seconds[k]!, 0) / weight
      expect(middle).toBeCloseTo(1, 4)
    }
  })
})

describe('band limit', () => {
  test.each([
    // Gain of the kernel; a 1 kHz source leaves only the kernel.
    [0.1, 0.983],
    [0.2, 0.929],
    [0.3, 0.832],
    [0.4, 0.69],
  ])('at %f of the output rate the gain is %f', (share, gain) => {
    const f = share * 50
    expect(amplitude(f, resample(evenTimes(1000, 8), 50, sine(f)))).toBeCloseTo(gain, 2)
  })

  test('70 Hz at 100 Hz out would fold to 30 Hz; it arrives there with less than a fifth', () => {
    const filtered = resample(evenTimes(1000, 4), 100, sine(70))
    expect(amplitude(30, filtered)).toBeLessThan(0.2)
    const picked = {
      values: filtered.seconds.map(sine(70)),
      seconds: filtered.seconds,
    }
    expect(amplitude(30, picked)).toBeCloseTo(1, 2)
  })

  test('at the output rate itself nothing passes', () => {
    expect(amplitude(0, resample(evenTimes(1000, 4), 50, sine(50)))).toBeLessThan(0.01)
  })

  test('content ends at half the slower rate', () => {
    expect(contentLimitHz(60, 208)).toBe(30)
    expect(contentLimitHz(60, 52)).toBe(26)
  })
})

describe('streaming', () => {
  const motion = (t: number) =>
    [
      2 * Math.sin(9 * t),
      Math.cos(7 * t),
      9.8,
      200 * Math.sin(11 * t),
      -150 * Math.cos(5 * t),
      30 * t,
    ] as [number, number, number, number, number, number]

  test('any split into blocks gives exactly the counts of the whole', () => {
    const times = phoneTimes(3, 8)
    times.splice(60, 12) // a gap
    const later = times.map((t, i) => (i > 120 ? t + 3000 : t)) // a pause
    const recording = sampled(later, motion)
    for (const rateHz of [12.5, 52, 104]) {
      const target = { ...defaultTarget(), rateHz }
      const whole = conditionRecording(recording, target, 1).counts
      fc.assert(
        fc.property(fc.array(fc.nat(later.length), { maxLength: 12 }), (cuts) => {
          const conditioner = new StreamConditioner(target, 1)
          const edges = [0, ...cuts.sort((a, b) => a - b), later.length]
          const pieces = edges
            .slice(1)
            .map((to, i) => [...conditioner.push(rows(recording, edges[i]!, to)).counts])
          expect([...pieces.flat(), ...conditioner.flush().counts]).toEqual([...whole])
        }),
        { numRuns: 25 },
      )
    }
  })

  test.each([
    [60, 1],
    [1000, 1.5],
  ])(
    'counts of a %i Hz source come with a delay of %f periods and one interval at most',
    (sourceHz, periods) => {
      const recording = sampled(evenTimes(sourceHz, 2), motion)
      const conditioner = new StreamConditioner(defaultTarget(), 1)
      expect(conditioner.delayMs).toBeCloseTo(28.846, 3)
      let given = 0
      let longest = 0
      for (let i = 0; i < recording.tMs.length; i++) {
        given += conditioner.push(rows(recording, i, i + 1)).counts.length / 6
        const waiting = recording.tMs[i]! - conditioner.timeOfMs(given)
        // The first reading has no interval yet, and is taken as one of a fast source.
        if (i > 1) longest = Math.max(longest, waiting)
      }
      expect(longest).toBeLessThan((periods * 1000) / 52)
      expect(longest).toBeGreaterThan(((periods - 0.1) * 1000) / 52)
      expect(given).toBeGreaterThan(100)
    },
  )

  test('index and source time belong together, also when the source clock starts late', () => {
    const recording = sampled(evenTimes(60, 1, 123_456), motion)
    const conditioner = new StreamConditioner(defaultTarget(), 1)
    const count =
      conditioner.push(recording).counts.length / 6 + conditioner.flush().counts.length / 6
    expect(conditioner.timeOfMs(0)).toBe(123_456)
    expect(conditioner.timeOfMs(52)).toBeCloseTo(124_456, 9)
    expect(count).toBe(53)
  })

  test('times before the first sample are not known', () => {
    expect(new StreamConditioner(defaultTarget(), 1).timeOfMs(0)).toBeNaN()
    expect(new StreamConditioner(defaultTarget(), 1).flush().counts).toHaveLength(0)
  })
})

describe('trouble in the source', () => {
  const steady = [0, 0, 9.8, 0, 0, 0] as [number, number, number, number, number, number]

  test('a gap is bridged by a straight line and listed', () => {
    const times = [...evenTimes(60, 1), ...evenTimes(60, 1, 1400)]
    const recording = sampled(times, (t) => [0, 0, 9.8, 100 * t, 0, 0])
    const conditioner = new StreamConditioner(defaultTarget(), 1)
    const counts = [...conditioner.push(recording).counts, ...conditioner.flush().counts]
    expect(conditioner.gaps).toEqual([{ startMs: 1000, endMs: 1400 }])
    expect(findGaps(times)).toEqual([{ startMs: 1000, endMs: 1400 }])
    const inside = axisOf(Int16Array.from(counts), 3).slice(55, 70)
    for (const [i, value] of inside.entries()) {
      expect(Math.abs(value - (100 * (55 + i)) / 52 / 0.035)).toBeLessThanOrEqual(0.51)
    }
  })

  test('a pause of an hour adds no samples and times go on behind it', () => {
    const hour = 3_600_000
    const recording = sampled([...evenTimes(60, 1), ...evenTimes(60, 1, hour)], () => steady)
    const conditioner = new StreamConditioner(defaultTarget(), 1)
    const count =
      (conditioner.push(recording).counts.length + conditioner.flush().counts.length) / 6
    expect(count).toBe(106)
    expect(conditioner.timeOfMs(52)).toBeCloseTo(1000, 9)
    expect(conditioner.timeOfMs(53)).toBe(hour)
    expect(conditioner.gaps).toEqual([{ startMs: 1000, endMs: hour }])
  })

  test('several samples at one time and samples out of order do no harm', () => {
    const times = [0, 16, 16, 16, 33, 20, 50, 66, 83, 100, 116]
    const conditioner = new StreamConditioner(defaultTarget(), 1)
    const counts = conditioner.push(sampled(times, () => steady)).counts
    expect(conditioner.misplacedCount).toBe(1)
    expect(axisOf(counts, 2).every((value) => value === 4096)).toBe(true)
  })

  test('a value that is not a number holds the last one, and is counted', () => {
    const recording = sampled(evenTimes(60, 0.5), () => steady)
    recording.values[6 * 10 + 2] = Number.NaN
    recording.values[6 * 11 + 3] = Number.POSITIVE_INFINITY
    recording.tMs[20] = Number.NaN
    const conditioner = new StreamConditioner(defaultTarget(), 1)
    const counts = conditioner.push(recording).counts
    expect(conditioner.badValueCount).toBe(2)
    expect(conditioner.misplacedCount).toBe(1)
    expect(axisOf(counts, 2).every((value) => value === 4096)).toBe(true)
    expect(axisOf(counts, 3).every((value) => value === 0)).toBe(true)
  })

  test('no times and values whatsoever make anything but whole counts', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double(), fc.float()), { maxLength: 40 }),
        fc.constantFrom(12.5, 52, 400),
        (samples, rateHz) => {
          const block = {
            tMs: Float64Array.from(samples, ([t]) => t % 10_000),
            values: Float32Array.from(samples.flatMap(([, v]) => new Array<number>(6).fill(v))),
          }
          const { counts } = conditionRecording(block, { ...defaultTarget(), rateHz }, 1)
          expect(counts.length % 6).toBe(0)
        },
      ),
    )
  })
})

describe('timing', () => {
  test('rate by the median is 58.82 Hz where the mean says 55, with one late sample', () => {
    const facts = timingFacts([0, 16, 33, 50, 66, 83, 100, 117, 133, 150, 166, 200])
    expect(facts.rateHz).toBeCloseTo(58.8235, 4)
    expect(1000 / facts.meanMs).toBeCloseTo(55, 9)
    expect(facts).toMatchObject({ medianMs: 17, spreadMs: 0, longestMs: 34, lateCount: 1 })
  })

  test('one sample has no rate', () => {
    expect(timingFacts([5])).toMatchObject({ rateHz: 0, lateCount: 0, longestMs: 0 })
    expect(findGaps([])).toEqual([])
  })
})
