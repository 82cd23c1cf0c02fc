import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core, DtwOptions } from '../../../src/shared/core/core'
import { encodeModel } from '../../../src/shared/format/model-bytes'
import type { TrainedModel } from '../../../src/shared/model/evaluation'
import { channelCount } from '../../../src/shared/model/recogniser-model'
import { replayRecording } from '../../../src/shared/replay/replay-recording'
import { unrollSegment, type Warping, warp, warpingMatrix } from '../../../src/shared/replay/unroll'
import { createRandom } from '../../../src/shared/statistics/random'
import { trainModel } from '../../../src/shared/training/train-model'
import { samplesOf, tinyLibrary } from '../training/tiny-library'

let core: Core
beforeAll(async () => {
  core = await loadCoreForNode()
})

/** The sum of local costs over the pairs of a path, from the series alone. */
function summed(a: Int8Array, b: Int8Array, { channels, cost }: DtwOptions, path: Warping['path']) {
  let sum = 0
  for (const [i, j] of path) {
    for (let c = 0; c < channels; c++) {
      const difference = a[i * channels + c] - b[j * channels + c]
      sum += cost === 1 ? difference * difference : Math.abs(difference)
    }
  }
  return sum
}

describe("Müller's example (Fundamentals of Music Processing, Springer 2015, ch. 3)", () => {
  const x = Int8Array.of(1, 3, 3, 8, 1)
  const y = Int8Array.of(2, 0, 0, 8, 7, 2)
  const options: DtwOptions = { channels: 1, band: 10, cost: 0 }

  it('gives the cells of the printed matrix', () => {
    expect([...warpingMatrix(core, x, y, options)]).toEqual([
      1, 2, 3, 10, 16, 17, 2, 4, 5, 8, 12, 13, 3, 5, 7, 10, 12, 13, 9, 11, 13, 7, 8, 14, 10, 10, 11,
      14, 13, 9,
    ])
  })

  it('gives the printed path, and the growth along it', () => {
    const warping = warp(core, x, y, options)
    expect(warping?.path).toEqual([
      [0, 0],
      [1, 1],
      [2, 2],
      [3, 3],
      [3, 4],
      [4, 5],
    ])
    expect(warping?.grown).toEqual([1, 4, 7, 8, 9])
    expect(warping?.distance).toBe(9)
  })
})

describe('a path of random series', () => {
  it('sums up to the core’s distance to the bit, inside the band and without a jump', () => {
    const random = createRandom(11)
    const series = (points: number, channels: number) =>
      Int8Array.from({ length: points * channels }, () => Math.floor(random.next() * 256) - 128)
    for (let round = 0; round < 60; round++) {
      const channels = 1 + (round % 13)
      const points = 2 + Math.floor(random.next() * 20)
      const options: DtwOptions = { channels, band: round % 5, cost: round % 2 === 0 ? 0 : 1 }
      const [a, b] = [series(points, channels), series(points, channels)]
      const warping = warp(core, a, b, options)
      if (warping === null) throw new Error('equal lengths always have a path')
      const { path, grown } = warping
      expect(summed(a, b, options, path)).toBe(core.dtw(a, b, options))
      expect(path[0]).toEqual([0, 0])
      expect(path.at(-1)).toEqual([points - 1, points - 1])
      for (const [k, [i, j]] of path.entries()) {
        expect(Math.abs(i - j)).toBeLessThanOrEqual(options.band)
        const [beforeI, beforeJ] = path[k - 1] ?? [i - 1, j]
        expect([i - beforeI, j - beforeJ].every((step) => step === 0 || step === 1)).toBe(true)
      }
      expect(grown).toEqual([...grown].sort((one, other) => one - other))
      expect(grown.at(-1)).toBe(warping.distance)
    }
  })

  it('is none where the lengths differ by more than the band', () => {
    const [a, b] = [new Int8Array(8), new Int8Array(4)]
    expect(warp(core, a, b, { channels: 1, band: 3, cost: 0 })).toBeNull()
  })
})

describe('a segment of a replay, unrolled', () => {
  const full = tinyLibrary()
  let trained: TrainedModel
  beforeAll(() => {
    const result = trainModel(core, full)
    if (!result.ok) throw new Error(result.message)
    trained = result.value
  })

  it('has the distance of the decision and of the runner-up, and their paths sum up to them', () => {
    const { model } = trained
    const nod = { axis: 3, turns: 1, sizeDps: 250, durationS: 1 }
    const samples = samplesOf([nod, { ...nod, axis: 5, turns: 2 }], createRandom(3))
    const replay = replayRecording(core, model, full.library.target, samples, 1)
    if (!replay.ok) throw new Error(replay.message)
    expect(replay.value.events).toHaveLength(2)
    const channels = channelCount(model.normaliser)
    for (const [index, event] of replay.value.events.entries()) {
      const query = replay.value.queries[index]
      if (query === null || query === undefined) throw new Error('the movement was compared')
      const warpings = unrollSegment(core, model, query)
      expect(warpings.map((one) => one?.distance)).toEqual(replay.value.gestureDistances[index])
      expect(warpings[event.gesture ?? -1]?.distance).toBe(event.distance)
      expect(warpings[event.runnerUp ?? -1]?.distance).toBe(event.runnerUpDistance)
      for (const [gesture, warping] of warpings.entries()) {
        const template = model.gestures[gesture].templates[warping?.template ?? -1]
        const options: DtwOptions = { channels, band: model.band, cost: model.cost }
        expect(summed(query, template, options, warping?.path ?? [])).toBe(warping?.distance)
      }
    }
    // The loaded recogniser is not disturbed by it.
    core.load(encodeModel(model))
  })
})
