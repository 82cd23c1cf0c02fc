import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { SIMD_PROBE } from '../../src/shared/core/simd-probe'
import { featureRecords } from '../../src/shared/format/kernel-bytes'
import { encodeModel } from '../../src/shared/format/model-bytes'
import { AXES } from '../../src/shared/model/sample'
import { createRandom } from '../../src/shared/statistics/random'
import { PLAIN_ALGEBRA } from '../../src/shared/training/kernel/linear-algebra'
import { wasCompared } from '../../src/shared/training/stream'
import { concat, exampleKernel, exampleModel, movement, ONE_G, rest } from './example-model'

let simd: WasmCore
let plain: WasmCore

beforeAll(async () => {
  simd = await loadCoreForNode('simd')
  plain = await loadCoreForNode('plain')
})

it('the least module with a vector in it is valid here, and is not without its vector', () => {
  expect(WebAssembly.validate(SIMD_PROBE)).toBe(true)
  const other = SIMD_PROBE.slice()
  // 0xff is no instruction of the vector page.
  other[other.length - 2] = 0xff
  expect(WebAssembly.validate(other)).toBe(false)
})

/** Series of int8 drawn so that the ends of the range come up often. */
const seriesOf = (count: number, size: number, seed: number) => {
  const random = createRandom(seed)
  const value = () => {
    const pick = random.next()
    if (pick < 0.15) return -128
    return pick < 0.3 ? 127 : random.integer(256) - 128
  }
  return Array.from({ length: count }, () => Int8Array.from({ length: size }, value))
}

describe('the build with vectors gives the integers of the plain one', () => {
  it('for distances of any shape, band and cost, also where sixteen bits are too few', () => {
    const shape = fc.record({
      count: fc.integer({ min: 1, max: 21 }),
      length: fc.integer({ min: 1, max: 128 }),
      channels: fc.integer({ min: 1, max: 13 }),
      band: fc.integer({ min: 0, max: 127 }),
      cost: fc.constantFrom(0 as const, 1 as const),
      seed: fc.integer(),
    })
    let large = 0
    fc.assert(
      fc.property(shape, ({ count, length, channels, band, cost, seed }) => {
        const series = seriesOf(count, length * channels, seed)
        const options = { channels, band, cost }
        const table = simd.distances(series, options)
        expect(table).toEqual(plain.distances(series, options))
        const few = series.slice(0, 3)
        const matrix = simd.dtwMatrix(few, series, options)
        for (let i = 0; i < few.length; i++) {
          for (let j = 0; j < count; j++) {
            expect(matrix[i * count + j]).toBe(plain.dtw(series[i]!, series[j]!, options))
          }
        }
        large += table.filter((value) => value > 0xffff).length
      }),
      { numRuns: 60 },
    )
    expect(large).toBeGreaterThan(100)
  })

  it('for counts of kernel features over any channels, differences and dilations', () => {
    const random = createRandom(3)
    for (let round = 0; round < 60; round++) {
      const length = 4 + random.integer(60)
      const model = exampleModel({ normaliser: { length, channelMask: 0x1fff }, band: 3 })
      for (const core of [simd, plain]) core.load(encodeModel(model))
      const queries = seriesOf(1 + random.integer(20), length * 13, round)
      const shapes = Array.from({ length: 30 }, () => ({
        kernel: random.integer(84),
        differences: random.integer(2) === 1,
        dilation: 1 + random.integer(length - 1),
        // Up to all thirteen in every other round, which sixteen bits cannot hold.
        channels: round % 2 === 0 ? 1 + random.integer(0x1fff) : 1 << random.integer(13),
        bias: random.integer(4000) - 2000,
      }))
      const records = featureRecords(shapes)
      expect(simd.kernelCounts(queries, records)).toEqual(plain.kernelCounts(queries, records))
    }
  })

  it('for scores of kernel features, of segments up to the longest and with every channel', () => {
    const random = createRandom(5)
    for (let round = 0; round < 60; round++) {
      const length = round % 6 === 0 ? 128 : 4 + random.integer(125)
      // Up to all thirteen channels in every third round, which sixteen bits cannot hold.
      const channels = round % 3 === 0 ? 13 : 9
      const model = exampleModel({
        normaliser: { length, channelMask: 2 ** channels - 1 },
        band: 3,
        kernel: exampleKernel(length, channels, { pools: round % 2 === 0 ? 3 : 2, logWeight: 0 }),
      })
      for (const core of [simd, plain]) core.load(encodeModel(model))
      const down: [number, number, number] = [0, 0, ONE_G]
      for (let i = 0; i < 10; i++) {
        const counts = movement(10 + random.integer(200), down, 100 + 3000 * i, random)
        expect(simd.classify(counts, null)).toEqual(plain.classify(counts, null))
      }
    }
  })

  it('for whole streams, pushed sample by sample or at once', () => {
    const model = exampleModel({ kernel: exampleKernel(16, 6) })
    const down: [number, number, number] = [0, 0, ONE_G]
    for (const core of [simd, plain]) core.load(encodeModel(model))
    let events = 0
    for (let seed = 0; seed < 20; seed++) {
      const random = createRandom(seed)
      // More decisions than the module gives at a time come up in the last rounds.
      const parts = Array.from({ length: 1 + seed * seed }, () => [
        movement(6 + random.integer(70), down, 3000, random),
        rest(12, down, random),
      ])
      const counts = concat(...parts.flat())
      const one: unknown[] = []
      plain.reset()
      for (let i = 0; i < counts.length; i += AXES) {
        for (const event of plain.push(counts.subarray(i, i + AXES))) {
          one.push({ event, query: wasCompared(event) ? plain.query() : null })
        }
      }
      events += one.length
      for (const core of [simd, plain]) {
        const samples = counts.length / AXES
        const trace = { energy: new Uint32Array(samples), phase: new Uint8Array(samples) }
        const other = { energy: new Uint32Array(samples), phase: new Uint8Array(samples) }
        core.reset()
        const all = core.pushAll(counts, trace).map(({ event, query }) => {
          return { event, query: wasCompared(event) ? query : null }
        })
        expect(all).toEqual(one)
        core.reset()
        core.push(counts, other)
        expect(trace).toEqual(other)
      }
    }
    expect(events).toBeGreaterThan(1000)
  })
})

describe('algebra in the module', () => {
  it('gives the bits of the plain loops, with vectors or without', () => {
    const random = createRandom(9)
    for (const [rows, columns] of [
      [1, 1],
      [3, 7],
      [5, 2],
      [64, 300],
      [65, 257],
      [131, 600],
    ] as const) {
      const values = Float64Array.from({ length: rows * columns }, () => random.normal())
      const single = Float32Array.from(values)
      const gram = PLAIN_ALGEBRA.gram(single, rows)
      for (const core of [simd, plain]) expect(core.gram(single, rows)).toEqual(gram)
      const right = Float64Array.from({ length: columns * 9 }, () => random.normal())
      const product = PLAIN_ALGEBRA.product(values, rows, right, 9)
      for (const core of [simd, plain]) {
        expect(core.product(values, rows, right, 9)).toEqual(product)
      }
      // Bytes stand for the numbers they are.
      const bytes = Uint8Array.from({ length: rows * columns }, () => random.integer(256))
      const counted = PLAIN_ALGEBRA.product(Float64Array.from(bytes), rows, right, 9)
      for (const core of [simd, plain, PLAIN_ALGEBRA]) {
        expect(core.product(bytes, rows, right, 9)).toEqual(counted)
      }
      const shift = { add: 100, strength: 0.3 }
      const targets = right.slice(0, 9 * Math.min(rows, columns))
      const some = targets.length / 9
      const matrix = new Float64Array(some * some)
      for (let i = 0; i < some; i++) {
        matrix.set(gram.subarray(i * rows, i * rows + some), i * some)
      }
      const sizes = some > 2 ? [1, Math.ceil(some / 2) - 1, Math.floor(some / 2)] : [some]
      const wanted = PLAIN_ALGEBRA.leaveOut(matrix, shift, targets, 9, sizes)
      for (const core of [simd, plain]) {
        expect(core.leaveOut(matrix, shift, targets, 9, sizes)).toEqual(wanted)
      }
    }
  })

  it('refuses a matrix that is not positive definite, and goes on', () => {
    for (const core of [simd, plain]) {
      const targets = Float64Array.of(1, 1)
      const none = { add: 0, strength: 0 }
      const indefinite = Float64Array.of(1, 2, 2, 1)
      expect(() => core.leaveOut(indefinite, none, targets, 1, [2])).toThrow(RangeError)
      // Left out there is nothing to go by: all of the target is missed.
      expect(
        core.leaveOut(Float64Array.of(3), { add: 0, strength: 1 }, Float64Array.of(1), 1, [1]),
      ).toEqual({
        dual: Float64Array.of(0.25),
        residuals: Float64Array.of(1),
      })
    }
  })
})
