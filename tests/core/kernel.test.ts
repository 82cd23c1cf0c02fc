import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { type FeatureShape, featureRecords } from '../../src/shared/format/kernel-bytes'
import { encodeModel } from '../../src/shared/format/model-bytes'
import type { RecogniserModel } from '../../src/shared/model/recogniser-model'
import { createRandom } from '../../src/shared/statistics/random'
import { exampleKernel, exampleModel, gesture, movement, ONE_G } from './example-model'

let core: WasmCore
beforeAll(async () => {
  core = await loadCoreForNode()
})

/** The 84 triples of nine in lexicographic order. */
const TRIPLES: number[][] = []
for (let a = 0; a < 9; a++)
  for (let b = a + 1; b < 9; b++) for (let c = b + 1; c < 9; c++) TRIPLES.push([a, b, c])

/** Convolution written from the paper: weights 2 at the triple and -1 elsewhere, zeros outside. */
function outputs(query: Int8Array, channels: number, feature: FeatureShape): number[] {
  const length = query.length / channels
  const point = (k: number) => {
    let sum = 0
    for (let c = 0; c < channels; c++)
      if ((feature.channels >> c) & 1) sum += query[k * channels + c]!
    return sum
  }
  const line = Array.from({ length }, (_, k) =>
    feature.differences ? (k === 0 ? 0 : point(k) - point(k - 1)) : point(k),
  )
  const weights = Array.from({ length: 9 }, (_, tap) =>
    TRIPLES[feature.kernel]!.includes(tap) ? 2 : -1,
  )
  return line.map((_, k) =>
    weights.reduce((sum, w, tap) => sum + w * (line[k + (tap - 4) * feature.dilation] ?? 0), 0),
  )
}

function pools(values: number[], bias: number): number[] {
  const above = values.map((value) => (value > bias ? 1 : 0))
  const half = Math.floor(values.length / 2)
  const count = (part: number[]) => part.reduce((sum, one) => sum + one, 0)
  const runs = above.join('').split('0')
  return [
    count(above.slice(0, half)),
    count(above.slice(half)),
    Math.max(...runs.map((run) => run.length)),
  ]
}

/** log2 on straight lines between powers of two. */
function straightLog2(value: number): number {
  const exponent = Math.floor(Math.log2(value))
  return exponent + value / 2 ** exponent - 1
}

function slowDistances(query: Int8Array, channels: number, model: RecogniserModel): number[] {
  const { kernel, gestures } = model
  if (kernel === null) throw new Error('needs features')
  return gestures.map(({ templates }, g) => {
    let distance = kernel.bases[g]!
    for (const feature of kernel.features) {
      const counts = pools(outputs(query, channels, feature), feature.bias)
      for (let p = 0; p < kernel.pools; p++)
        distance -= feature.weights[p * gestures.length + g]! * counts[p]!
    }
    const options = { channels, band: model.band, cost: model.cost }
    const nearest = Math.min(...templates.map((template) => core.dtw(query, template, options)))
    if (templates.length > 0) distance += kernel.logWeight * straightLog2(nearest + 1)
    return Math.max(0, distance)
  })
}

function randomCut(random: ReturnType<typeof createRandom>): Int16Array {
  return movement(4 + random.integer(80), [0, 0, ONE_G], 500 + random.integer(9000), random)
}

describe('kernel features', () => {
  it('give outputs and counts as a plain convolution does', () => {
    const random = createRandom(60)
    for (const [length, mask, channels] of [
      [24, 0x1fff, 13],
      [9, 0b111, 3],
      [64, 0b110001, 3],
    ] as const) {
      core.load(encodeModel(exampleModel({ normaliser: { length, channelMask: mask } })))
      const { features } = exampleKernel(length, channels, {}, 84)
      for (const [index, feature] of features.entries()) feature.kernel = index
      const queries = Array.from({ length: 5 }, () => {
        core.classify(randomCut(random), null)
        return core.query()
      })
      const counts = core.kernelCounts(queries, featureRecords(features))
      for (const [f, feature] of features.entries()) {
        const given = core.kernelOutputs(queries, featureRecords([feature]))
        for (const [q, query] of queries.entries()) {
          const expected = outputs(query, channels, feature)
          expect([...given.subarray(q * length, (q + 1) * length)]).toEqual(expected)
          const at = (q * features.length + f) * 3
          expect([...counts.subarray(at, at + 3)]).toEqual(pools(expected, feature.bias))
        }
      }
    }
  })

  it('see no constant: the nine weights add up to nought away from the ends', () => {
    core.load(encodeModel(exampleModel({ normaliser: { length: 32, channelMask: 1 } })))
    const flat = new Int8Array(32).fill(77)
    for (const kernel of [0, 41, 83]) {
      const shape = { kernel, differences: false, dilation: 2, channels: 1, bias: 0 }
      const given = core.kernelOutputs([flat], featureRecords([shape]))
      expect([...given.subarray(8, 24)]).toEqual(Array(16).fill(0))
    }
  })
})

describe('distances of a model with kernel features', () => {
  const models: [string, RecogniserModel][] = [
    ['beside templates', exampleModel({ kernel: exampleKernel(16, 6) })],
    ['with two pools', exampleModel({ kernel: exampleKernel(16, 6, { pools: 2 }), cost: 0 })],
    [
      'alone',
      exampleModel({
        gestures: ['raise', 'swing', 'ring'].map((name) => gesture(name, 1000, [])),
        kernel: exampleKernel(16, 6, { logWeight: 0 }),
      }),
    ],
  ]
  for (const [name, model] of models)
    it(`are base - weighted counts + weighted logarithm, ${name}`, () => {
      const random = createRandom(61)
      core.load(encodeModel(model))
      for (let round = 0; round < 200; round++) {
        const event = core.classify(randomCut(random), null)
        const expected = slowDistances(core.query(), 6, model)
        const order = expected.map((_, i) => i).sort((a, b) => expected[a]! - expected[b]!)
        // The core's logarithm has steps of 1/256.
        const slack = (model.kernel?.logWeight ?? 0) / 256 + 1
        expect(Math.abs(event.distance! - expected[event.gesture!]!)).toBeLessThanOrEqual(slack)
        expect(expected[event.gesture!]! - expected[order[0]!]!).toBeLessThanOrEqual(slack)
      }
    })

  it('stay within what an event can say', () => {
    const cut = randomCut(createRandom(62))
    // Twenty features, each above its bias at all 16 points: 8 + 8 + a run of 16.
    const sum = 20 * 32 * 127
    for (const [base, weight, expected] of [
      [0, 127, 0],
      [-(2 ** 30), -127, 0],
      [2 ** 30, -127, 2 ** 30 + sum],
    ] as const) {
      const shape = exampleKernel(16, 6, { logWeight: 0 })
      for (const feature of shape.features) {
        feature.bias = -30_000
        feature.weights.fill(weight)
      }
      const model = exampleModel({ kernel: { ...shape, bases: [base, base, base] } })
      core.load(encodeModel(model))
      expect(core.classify(cut, null)).toMatchObject({ gesture: 0, distance: expected })
    }
  })
})
