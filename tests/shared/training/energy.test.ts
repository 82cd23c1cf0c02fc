import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'
import { encodeModel } from '../../../src/shared/format/model-bytes'
import { AXES } from '../../../src/shared/model/sample'
import { createRandom } from '../../../src/shared/statistics/random'
import { judgeCut } from '../../../src/shared/training/judge-cut'
import { runStream, wasCompared } from '../../../src/shared/training/stream'
import { concat, exampleModel, movement, ONE_G, rest } from '../../core/example-model'

let cores: Core[]

beforeAll(async () => {
  cores = [await loadCoreForNode('simd'), await loadCoreForNode('plain')]
})

/** Rests and movements of any strength, some far too short, some too long, some after the other. */
function recordingOf(seed: number): Int16Array {
  const random = createRandom(seed)
  const down: [number, number, number] = [random.integer(ONE_G), 0, ONE_G]
  return concat(
    ...Array.from({ length: random.integer(20) }, () => {
      const length = 1 + random.integer(90)
      if (random.next() < 0.4) return rest(length, down, random)
      return movement(length, down, 20 + 4000 * random.next() ** 3, random)
    }),
  )
}

const segmenters = fc.record({
  onThreshold: fc.integer({ min: 1, max: 3000 }),
  share: fc.double({ min: 0.05, max: 1, noNaN: true }),
  onHold: fc.integer({ min: 1, max: 9 }),
  offHold: fc.integer({ min: 1, max: 40 }),
  maxLength: fc.integer({ min: 40, max: 300 }),
  minLength: fc.integer({ min: 2, max: 30 }),
  preRoll: fc.integer({ min: 0, max: 25 }),
  refractory: fc.integer({ min: 0, max: 40 }),
  accelLag: fc.integer({ min: 1, max: 16 }),
  smoothShift: fc.integer({ min: 0, max: 4 }),
  restShift: fc.integer({ min: 1, max: 8 }),
})

describe('recordings cut by their energy', () => {
  it('give the segments, phases and queries that pushing their samples gives', () => {
    let seen = 0
    let unknown = 0
    fc.assert(
      fc.property(segmenters, fc.integer(), ({ share, ...wanted }, seed) => {
        const { segmenter } = exampleModel()
        Object.assign(segmenter, wanted)
        segmenter.offThreshold = Math.max(1, Math.round(share * wanted.onThreshold))
        const model = exampleModel({ segmenter, normaliser: { channelMask: 0x1fff }, band: 0 })
        const recordings = [seed, seed + 1, seed + 2].map(recordingOf)
        for (const core of cores) {
          core.load(encodeModel(model))
          const pushed = recordings.map((counts) => {
            const samples = counts.length / AXES
            const trace = { energy: new Uint32Array(samples), phase: new Uint8Array(samples) }
            return { trace, movements: runStream(core, counts, segmenter, { trace }) }
          })
          const energy = Uint32Array.from(pushed.flatMap(({ trace }) => [...trace.energy]))
          const lengths = pushed.map(({ trace }) => trace.energy.length)
          const phases = new Uint8Array(energy.length)
          const streams = { energy, counts: concat(...recordings), lengths }
          const cuts = core.cut(streams, segmenter, phases)
          expect([...phases]).toEqual(pushed.flatMap(({ trace }) => [...trace.phase]))
          expect(cuts.map((each) => each.map(({ event }) => event))).toEqual(
            pushed.map(({ movements }) =>
              movements.map(({ event: { start, end, reason } }) => ({
                start,
                end,
                // Whatever was compared is no more than a segment here.
                reason: reason === 'short' || reason === 'long' ? reason : 'none',
              })),
            ),
          )
          const compared = cuts.flatMap((each, i) =>
            each.flatMap(({ event: { start, end, reason }, gravity }) => {
              if (!wasCompared({ reason })) return []
              return [{ counts: recordings[i]!.subarray(start * AXES, end * AXES), gravity }]
            }),
          )
          expect(core.normalise(compared)).toEqual(
            pushed.flatMap(({ movements }) => movements.flatMap(({ query }) => query ?? [])),
          )
          seen += compared.length
          unknown += compared.filter(({ gravity }) => gravity === null).length
          const blind = core.cut({ energy, counts: null, lengths }, segmenter)
          expect(blind.map((each) => each.map(({ event }) => event))).toEqual(
            cuts.map((each) => each.map(({ event }) => event)),
          )
        }
      }),
      { numRuns: 150, seed: 1 },
    )
    expect(seen).toBeGreaterThan(300)
    expect(unknown).toBeGreaterThan(5)
  })
})

describe('a take', () => {
  const cut = (start: number, end: number, reason: 'none' | 'short' | 'long' = 'none') => ({
    event: { start, end, reason },
  })
  const trim = { from: 10, to: 100 }

  it('is split when two movements lie in its trim, and stands for the longer one', () => {
    const judged = judgeCut([cut(12, 30), cut(40, 70), cut(95, 120)], trim)
    expect(judged).toEqual({ cut: 'split', movement: cut(40, 70) })
  })

  it('is not split by a movement too short to be an activation', () => {
    expect(judgeCut([cut(12, 14, 'short'), cut(40, 70)], trim).cut).toBe('ok')
  })

  it('is missed when nothing lies within, and too long or short when its longest movement is', () => {
    expect(judgeCut([cut(0, 5), cut(120, 150)], trim)).toEqual({ cut: 'missed', movement: null })
    expect(judgeCut([cut(12, 90, 'long')], trim).cut).toBe('long')
    expect(judgeCut([cut(12, 14, 'short')], trim).cut).toBe('short')
  })
})
