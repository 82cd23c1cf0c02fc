import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import { conditionRecording } from '../../../src/shared/conditioning/condition-recording'
import type { Core } from '../../../src/shared/core/core'
import { DEMO_SEED, generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import { SimulatedHand } from '../../../src/shared/demo/simulated-hand'
import { cuttingModelBytes, defaultNormaliser } from '../../../src/shared/training/cutting-model'
import { defaultSegmenter } from '../../../src/shared/training/default-segmenter'
import { type Prepared, prepareLibrary } from '../../../src/shared/training/prepare'
import { runStream } from '../../../src/shared/training/stream'

const LENGTH = 32
const DTW = { channels: 6, band: 5, cost: 0 } as const

interface Cut {
  gesture: string
  tester: string
  query: Int8Array
}

let core: Core
let prepared: Prepared
const cuts: Cut[] = []

/** Normalised segments that the core cuts out of a stream with its default parameters. */
function cut(counts: Int16Array): Int8Array[] {
  const movements = runStream(core, counts, defaultSegmenter(prepared.target))
  return movements.flatMap(({ query }) => (query ? [query] : []))
}

/** Gesture of the nearest of the known segments. */
function nearest(distances: Float64Array, known: readonly Cut[], row: number): string | undefined {
  const own = distances.subarray(row * known.length, (row + 1) * known.length)
  return known[own.indexOf(Math.min(...own))]?.gesture
}

beforeAll(async () => {
  core = await loadCoreForNode()
  prepared = prepareLibrary(await generateDemoLibrary(DEMO_SEED))
  const model = { normaliser: defaultNormaliser(LENGTH), rollAlign: true }
  core.load(cuttingModelBytes(prepared.target, model))
  for (const { take, counts } of prepared.takes) {
    for (const query of cut(counts)) {
      cuts.push({ gesture: take.gestureId, tester: take.testerCode, query })
    }
  }
})

describe('the demo seen by the core', () => {
  it('is cut into exactly one movement a take', () => {
    const lengths = prepared.takes.map(({ counts }) => cut(counts).length)
    expect(new Set(lengths)).toEqual(new Set([1]))
  })

  it('moves enough in the background to try false activations, and rests between', () => {
    const movements = prepared.backgrounds.reduce(
      (total, { counts }) => total + cut(counts).length,
      0,
    )
    expect(movements).toBeGreaterThan(50)
    expect(movements).toBeLessThan(400)
  })

  it('is told apart with testers held out by nearest take, well but not perfectly', () => {
    let right = 0
    for (const tester of new Set(cuts.map((one) => one.tester))) {
      const held = cuts.filter((one) => one.tester === tester)
      const known = cuts.filter((one) => one.tester !== tester)
      const distances = core.dtwMatrix(
        held.map(({ query }) => query),
        known.map(({ query }) => query),
        DTW,
      )
      right += held.filter((one, row) => nearest(distances, known, row) === one.gesture).length
    }
    expect(right / cuts.length).toBeGreaterThan(0.96)
    expect(right / cuts.length).toBeLessThan(1)
  })

  it('makes the movements of the simulated hand known, whoever that hand belongs to', () => {
    const results: boolean[] = []
    for (const seed of [11, 12, 13]) {
      const hand = new SimulatedHand(seed)
      const [tMs, values, wanted]: [number[], number[], string[]] = [[], [], []]
      const run = (durationMs: number) => {
        const untilMs = (tMs.at(-1) ?? 0) + durationMs
        for (let now = tMs.at(-1) ?? 0; now < untilMs; ) {
          now += 1000 / 60
          const { ax, ay, az, gx, gy, gz } = hand.sampleAt(now)
          tMs.push(now)
          values.push(ax, ay, az, gx, gy, gz)
        }
      }
      run(1500)
      for (const { id } of hand.movements) {
        hand.perform(id)
        wanted.push(id)
        while (hand.busy(tMs.at(-1) ?? 0)) run(50)
        run(900)
      }
      const samples = { tMs: Float64Array.from(tMs), values: Float32Array.from(values) }
      const queries = cut(conditionRecording(samples, prepared.target, 1).counts)
      expect(queries).toHaveLength(wanted.length)
      const distances = core.dtwMatrix(
        queries,
        cuts.map(({ query }) => query),
        DTW,
      )
      for (const [row, id] of wanted.entries()) results.push(nearest(distances, cuts, row) === id)
    }
    expect(results.filter((right) => right).length).toBeGreaterThanOrEqual(results.length - 1)
  })
})
