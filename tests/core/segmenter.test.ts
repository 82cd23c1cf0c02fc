import { beforeEach, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { encodeModel } from '../../src/shared/format/model-bytes'
import type { ModelSegmenter } from '../../src/shared/model/recogniser-model'
import { createRandom } from '../../src/shared/statistics/random'
import { concat, exampleModel, movement, ONE_G, rest } from './example-model'

let core: WasmCore
beforeEach(async () => {
  core = await loadCoreForNode()
})

/** Only the first gyroscope axis counts, so that energy is its magnitude. */
const PLAIN: ModelSegmenter = {
  accelWeight: 0,
  gyroWeight: 256,
  onThreshold: 100,
  offThreshold: 50,
  onHold: 1,
  offHold: 2,
  minLength: 2,
  maxLength: 40,
  preRoll: 0,
  refractory: 0,
  accelLag: 1,
  smoothShift: 0,
  restShift: 4,
}

function turning(values: number[]): Int16Array {
  const samples = new Int16Array(values.length * 6)
  values.forEach((value, i) => {
    samples[i * 6 + 3] = value
  })
  return samples
}

function cuts(change: Partial<ModelSegmenter>, values: number[]) {
  core.load(encodeModel(exampleModel({ segmenter: { ...PLAIN, ...change } })))
  return core.push(turning(values)).map(({ start, end, reason }) => [start, end, reason])
}

// Hysteresis example, computed by hand (times 100): on at 100, off below 50 for two in a row.
const SCHMITT = [10, 20, 60, 120, 90, 45, 55, 40, 20, 10, 10, 150, 10, 10, 10, 10]

describe('segmenter', () => {
  it('bridges a single dip and ends at the last sample above the off threshold', () => {
    // The worked example closes its segment at the last sample at or above off: 3..6 and 11..11.
    expect(cuts({}, SCHMITT)).toEqual([
      [3, 7, 'far'],
      [11, 12, 'short'],
    ])
  })
  it('ignores what does not stay above the on threshold for the on hold', () => {
    expect(cuts({ onHold: 2 }, SCHMITT)).toEqual([])
    expect(cuts({ onHold: 2 }, [0, 120, 0, 120, 130, 120, 0, 0, 0])).toEqual([[3, 6, 'far']])
  })
  it('takes the pre-roll along but never reaches into the segment before', () => {
    const two = [0, 0, 0, 0, 200, 200, 200, 0, 0, 200, 200, 200, 0, 0, 0]
    expect(cuts({ preRoll: 3 }, two).map(([start, end]) => [start, end])).toEqual([
      [1, 7],
      [7, 12],
    ])
  })
  it('starts at sample 0 when the pre-roll reaches before the first sample', () => {
    expect(cuts({ preRoll: 5 }, [0, 200, 200, 0, 0])).toEqual([[0, 3, 'far']])
  })
  it('rejects a movement that reaches the greatest length and then waits for rest', () => {
    const values = [0, ...Array(25).fill(200), 0, 0, 0, 200, 200, 200, 0, 0]
    expect(cuts({ maxLength: 10 }, values)).toEqual([
      [1, 11, 'long'],
      [29, 32, 'far'],
    ])
  })
  it('accepts one sample less than the greatest length', () => {
    expect(cuts({ maxLength: 10 }, [0, ...Array(9).fill(200), 0, 0])).toEqual([[1, 10, 'far']])
  })
  it('starts nothing during the refractory time', () => {
    const values = [200, 200, 200, 0, 0, 200, 200, 0, 0, 0, 200, 200, 200, 0, 0]
    expect(cuts({ refractory: 4 }, values)).toEqual([
      [0, 3, 'far'],
      [10, 13, 'far'],
    ])
  })
  it('hears the change of the accelerometer, not its level', () => {
    core.load(encodeModel(exampleModel({ segmenter: { accelWeight: 256, gyroWeight: 0 } })))
    const still = rest(60, [0, 0, ONE_G], createRandom(3))
    expect(core.push(still)).toEqual([])
    expect(core.push(movement(30, [0, 0, ONE_G], 3000, createRandom(4)))).toEqual([])
    expect(core.push(still).length).toBe(1)
  })
  it('smooths the energy: a lone spike no longer starts a segment', () => {
    const spike = [0, 0, 0, 190, 0, 0, 0, 0, 0]
    expect(cuts({}, spike).length).toBe(1)
    expect(cuts({ smoothShift: 1 }, spike)).toEqual([])
  })

  it('cuts by the button when the model says so', () => {
    core.load(encodeModel(exampleModel({ button: true, segmenter: { ...PLAIN, maxLength: 10 } })))
    expect(core.push(turning(Array(20).fill(500)))).toEqual([])
    core.button(true)
    expect(core.push(turning(Array(6).fill(0)))).toEqual([])
    core.button(false)
    const events = core.push(turning([0]))
    expect(events.map(({ start, end }) => [start, end])).toEqual([[20, 26]])
    core.button(true)
    const long = core.push(turning(Array(30).fill(0)))
    expect(long.map(({ start, end, reason }) => [start, end, reason])).toEqual([[27, 37, 'long']])
  })

  it('gives the same events for the same samples in blocks of any size', () => {
    const random = createRandom(11)
    const down: [number, number, number] = [0, 0, ONE_G]
    const parts = Array.from({ length: 12 }, () => [
      rest(10 + random.integer(20), down, random),
      movement(10 + random.integer(40), down, 4000, random),
    ]).flat()
    const samples = concat(...parts, rest(20, down, random))
    const bytes = encodeModel(exampleModel())
    core.load(bytes)
    const whole = core.push(samples)
    expect(whole.length).toBeGreaterThan(8)
    for (const size of [1, 2, 7, 64, 1023, 1024, 1025]) {
      core.reset()
      const events = []
      for (let at = 0; at < samples.length; at += size * 6)
        events.push(...core.push(samples.subarray(at, at + size * 6)))
      expect(events).toEqual(whole)
    }
  })

  it('is as new after a reset, whatever was heard before', () => {
    const random = createRandom(12)
    const samples = concat(
      rest(20, [0, 0, ONE_G], random),
      movement(30, [0, 0, ONE_G], 5000, random),
      rest(20, [0, 0, ONE_G], random),
    )
    core.load(encodeModel(exampleModel()))
    const first = core.push(samples)
    core.push(movement(13, [ONE_G, 0, 0], 9000, random))
    core.reset()
    expect(core.push(samples)).toEqual(first)
  })
})
