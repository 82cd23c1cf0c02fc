import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { encodeModel } from '../../src/shared/format/model-bytes'
import type { RecogniserModel } from '../../src/shared/model/recogniser-model'
import { createRandom } from '../../src/shared/statistics/random'
import { exampleModel, movement, ONE_G } from './example-model'

let core: WasmCore
beforeAll(async () => {
  core = await loadCoreForNode()
})

/** Mean of the piecewise constant signal over part k of `length`, in double precision. */
function partMean(values: number[], length: number, k: number): number {
  const [from, to] = [(k * values.length) / length, ((k + 1) * values.length) / length]
  let sum = 0
  for (let i = 0; i < values.length; i++) {
    const overlap = Math.min(to, i + 1) - Math.max(from, i)
    if (overlap > 0) sum += values[i]! * overlap
  }
  return sum / (to - from)
}

function interpolated(values: number[], length: number, k: number): number {
  const at = (k * (values.length - 1)) / (length - 1)
  const i = Math.min(Math.floor(at), values.length - 2)
  return values[i]! + (values[i + 1]! - values[i]!) * (at - i)
}

/** The header's words again, slowly and in double precision: an oracle, not a second core. */
function slowly(samples: Int16Array, { normaliser: n }: RecogniserModel): number[] {
  const count = samples.length / 6
  const axes = [0, 1, 2, 3, 4, 5].filter((axis) => (n.channelMask >> axis) & 1)
  const series = axes.map((axis) => {
    const values = Array.from({ length: count }, (_, i) => samples[i * 6 + axis]!)
    const points = Array.from({ length: n.length }, (_, k) =>
      count > n.length ? partMean(values, n.length, k) : interpolated(values, n.length, k),
    )
    const mean = points.reduce((sum, value) => sum + value, 0) / n.length
    return (n.centreMask >> axis) & 1 ? points.map((value) => value - mean) : points
  })
  const rms = (members: number[]) => {
    const all = members.flatMap((member) => series[member]!)
    return Math.sqrt(all.reduce((sum, value) => sum + value * value, 0) / all.length)
  }
  return Array.from({ length: n.length }, (_, k) => k).flatMap((k) =>
    axes.map((axis, c) => {
      const sensor = axis < 3 ? 0 : 1
      const group = axes.map((_, i) => i).filter((i) => axes[i]! < 3 === axis < 3)
      const size = [0, rms(group), rms([c])][n.scaleMode]!
      const value = (series[c]![k]! * n.gain[axis]!) / Math.max(size, n.floor[sensor]!)
      return Math.max(-127, Math.min(127, Math.round(value)))
    }),
  )
}

describe('normalisation', () => {
  for (const scaleMode of [0, 1, 2] as const)
    for (const channelMask of [0b111111, 0b000111, 0b101000])
      it(`is within one of a slow double-precision one (scale ${scaleMode}, mask ${channelMask})`, () => {
        const random = createRandom(100 * scaleMode + channelMask)
        for (let round = 0; round < 40; round++) {
          const model = exampleModel({
            rollAlign: false,
            normaliser: {
              channelMask,
              scaleMode,
              length: 4 + random.integer(60),
              centreMask: random.integer(64),
              gain: Array.from({ length: 6 }, () => 1 + random.integer(60)),
              floor: [500, 500],
            },
            band: 0,
          })
          const samples = movement(
            2 + random.integer(150),
            [0, 0, ONE_G],
            2 ** (4 + random.integer(11)),
            random,
          )
          core.load(encodeModel(model))
          core.classify(samples, null)
          const expected = slowly(samples, model)
          const worst = Math.max(...core.query().map((value, i) => Math.abs(value - expected[i]!)))
          // Each of resampling, centring and scaling rounds once.
          expect(worst).toBeLessThanOrEqual(1)
        }
      })

  it('does not blow up noise: below the floor the floor divides', () => {
    const model = exampleModel({ rollAlign: false, normaliser: { floor: [1000, 1000] } })
    core.load(encodeModel(model))
    const hum = Int16Array.from({ length: 240 }, (_, i) => (i % 12 < 6 ? 10 : -10))
    core.classify(hum, null)
    expect(Math.max(...core.query().map(Math.abs))).toBeLessThanOrEqual(1)
  })
})

describe('matching', () => {
  it('finds its own template at distance zero and names the runner-up', () => {
    const model = exampleModel({ rollAlign: false })
    core.load(encodeModel(model))
    const random = createRandom(40)
    const cut = movement(30, [0, 0, ONE_G], 5000, random)
    core.classify(cut, null)
    const own = core.query()
    model.gestures[1]!.templates = [own]
    core.load(encodeModel(model))
    const event = core.classify(cut, null)
    expect(event).toMatchObject({ kind: 'gesture', gesture: 1, distance: 0, threshold: 700_000 })
    const options = { channels: 6, band: model.band, cost: model.cost }
    const nearest = model.gestures.map((g) =>
      Math.min(...g.templates.map((template) => core.dtw(own, template, options))),
    )
    const others = nearest.map((distance, i) => (i === 1 ? Number.POSITIVE_INFINITY : distance))
    expect(event.runnerUpDistance).toBe(Math.min(...others))
    expect(event.runnerUp).toBe(others.indexOf(Math.min(...others)))
  })

  it('accepts at the threshold and rejects one above it', () => {
    const model = exampleModel({ rollAlign: false })
    core.load(encodeModel(model))
    const cut = movement(30, [0, 0, ONE_G], 5000, createRandom(41))
    const { gesture, distance } = core.classify(cut, null)
    for (const [threshold, kind, reason] of [
      [distance!, 'gesture', 'none'],
      [distance! - 1, 'reject', 'far'],
    ] as const) {
      model.gestures[gesture!]!.threshold = threshold
      core.load(encodeModel(model))
      expect(core.classify(cut, null)).toMatchObject({ kind, reason, gesture, distance })
    }
  })

  it('rejects as ambiguous when the runner-up is within the margin', () => {
    const model = exampleModel({ rollAlign: false })
    for (const one of model.gestures) one.threshold = 0xfffffff0
    core.load(encodeModel(model))
    const cut = movement(30, [0, 0, ONE_G], 5000, createRandom(42))
    const { distance, runnerUpDistance } = core.classify(cut, null)
    const lead = ((runnerUpDistance! - distance!) / distance!) * 100
    expect(lead).toBeLessThan(200)
    model.marginPercent = Math.ceil(lead) + 1
    core.load(encodeModel(model))
    expect(core.classify(cut, null)).toMatchObject({ kind: 'reject', reason: 'ambiguous' })
    model.marginPercent = Math.max(0, Math.floor(lead) - 1)
    core.load(encodeModel(model))
    expect(core.classify(cut, null)).toMatchObject({ kind: 'gesture', reason: 'none' })
  })

  it('answers as a search over all templates does, on a thousand random segments', () => {
    const random = createRandom(43)
    const model = exampleModel({ rollAlign: false })
    core.load(encodeModel(model))
    const options = { channels: 6, band: model.band, cost: model.cost }
    for (let round = 0; round < 1000; round++) {
      const cut = movement(
        8 + random.integer(40),
        [0, 0, ONE_G],
        500 + random.integer(9000),
        random,
      )
      const event = core.classify(cut, null)
      const query = core.query()
      const nearest = model.gestures.map((g) =>
        Math.min(...g.templates.map((template) => core.dtw(query, template, options))),
      )
      const order = nearest.map((_, i) => i).sort((a, b) => nearest[a]! - nearest[b]! || a - b)
      expect([event.gesture, event.runnerUp]).toEqual(order.slice(0, 2))
      expect([event.distance, event.runnerUpDistance]).toEqual(
        order.slice(0, 2).map((i) => nearest[i]),
      )
    }
  })
})
