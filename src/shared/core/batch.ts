import { FEATURE_BYTES } from '../format/kernel-bytes'
import { type DtwOptions, type Factors, type LeftOut, MAX_POOLS, type Shift } from './core'
import type { CoreExports, WasmMemory } from './wasm-memory'

export const NO_DISTANCE = 0xffffffff
/** Longest series `mvw_dtw` takes. */
export const MAX_LENGTH = 128

/** DEPTH, WIDE and WIDE_SINGLE of `src/core/port/dense_wasm.c`, for its scratch. */
const DEPTH = 256
const WIDE = 4
const WIDE_SINGLE = 8

/** Many comparisons in one call, over `src/core/port/batch_wasm.c` and `dense_wasm.c`. */
export class CoreBatch {
  constructor(
    private readonly exports: CoreExports,
    private readonly memory: WasmMemory,
    /** Scratch of MAX_LENGTH words. */
    private readonly row: number,
  ) {}

  matrix(
    rows: readonly Int8Array[],
    columns: readonly Int8Array[],
    options: DtwOptions,
  ): Float64Array {
    const matrix = new Float64Array(rows.length * columns.length)
    if (matrix.length === 0) return matrix
    return this.released(() => {
      const packed = this.pack(columns, options)
      const from = this.memory.putAll(rows, columns[0]!.length)
      for (let i = 0; i < rows.length; i++) {
        const row = this.rowOf(from + i * packed.size, packed, 0, options)
        for (let j = 0; j < columns.length; j++) {
          matrix[i * columns.length + j] = toDistance(row[j]!) ?? Number.POSITIVE_INFINITY
        }
      }
      return matrix
    })
  }

  distances(series: readonly Int8Array[], options: DtwOptions): Float64Array {
    const n = series.length
    const table = new Float64Array(n * n)
    if (n === 0) return table
    return this.released(() => {
      const packed = this.pack(series, options)
      for (let i = 0; i + 1 < n; i++) {
        const row = this.rowOf(packed.series + i * packed.size, packed, i + 1, options)
        for (let j = i + 1; j < n; j++) {
          table[i * n + j] = toDistance(row[j]!) ?? Number.POSITIVE_INFINITY
        }
      }
      mirrorUpper(table, n)
      return table
    })
  }

  kernelCounts(
    queries: readonly Int8Array[],
    records: Uint8Array,
    size: number,
    length: number,
  ): Uint8Array {
    return this.released(() => {
      const { exports, memory } = this
      const series = memory.putAll(queries, size)
      const features = memory.putBytes(records)
      const count = records.length / FEATURE_BYTES
      const total = queries.length * count * MAX_POOLS
      const out = memory.take(total)
      const packed = memory.take(exports.pack_values(queries.length, size) * 2)
      exports.pack(series, queries.length, size, packed)
      const [n, channels] = [queries.length, size / length]
      if (exports.kernel_counts_packed(packed, n, length, channels, features, count, out) === 0) {
        exports.kernel_counts(series, n, features, count, out)
      }
      return memory.uint8(out, total).slice()
    })
  }

  gram(values: Float32Array, rows: number): Float64Array {
    return this.released(() => {
      // The module takes four rows at a time: those that are missing are nought.
      const whole = Math.ceil(rows / 4) * 4
      const columns = values.length / rows
      const from = this.memory.take(whole * columns * 4)
      const given = this.memory.float32(from, whole * columns)
      given.set(values)
      given.fill(0, values.length)
      const to = this.memory.take(whole * whole * 8)
      const scratch = this.memory.take(DEPTH * (whole + WIDE_SINGLE) * 4)
      this.exports.gram(from, whole, columns, to, scratch)
      const gram = this.memory.float64(to, whole * whole)
      if (whole === rows) return gram.slice()
      const fewer = new Float64Array(rows * rows)
      for (let i = 0; i < rows; i++) fewer.set(gram.subarray(i * whole, i * whole + rows), i * rows)
      return fewer
    })
  }

  product(a: Factors, rows: number, b: Factors, columns: number): Float64Array {
    return this.released(() => {
      const [left, right] = [this.memory.putFloat64(a), this.memory.putFloat64(b)]
      const out = this.memory.take(rows * columns * 8)
      const scratch = this.memory.take(DEPTH * (columns + WIDE) * 8)
      this.exports.product(left, rows, a.length / rows, right, columns, out, scratch)
      return this.memory.float64(out, rows * columns).slice()
    })
  }

  leaveOut(
    matrix: Float64Array,
    { add, strength }: Shift,
    targets: Float64Array,
    columns: number,
    sizes: readonly number[],
  ): LeftOut {
    return this.released(() => {
      const { memory } = this
      const n = targets.length / columns
      const most = Math.max(...sizes)
      const groups = memory.take(sizes.length * 4)
      memory.uint32(groups, sizes.length).set(sizes)
      const [given, wanted] = [memory.putFloat64(matrix), memory.putFloat64(targets)]
      const [dual, residuals] = [memory.take(targets.byteLength), memory.take(targets.byteLength)]
      const scratch = memory.take(
        (n * n + n * columns + most * (n + most) + DEPTH * (n + WIDE)) * 8,
      )
      const found = this.exports.leave_out(
        ...([given, n, add, strength, wanted, columns] as const),
        ...([groups, sizes.length, most, dual, residuals, scratch] as const),
      )
      if (found === 0) throw new RangeError('the matrix is not positive definite')
      return {
        dual: memory.float64(dual, targets.length).slice(),
        residuals: memory.float64(residuals, targets.length).slice(),
      }
    })
  }

  /** Gives back all memory that the work has taken. */
  private released<T>(work: () => T): T {
    const mark = this.memory.mark()
    try {
      return work()
    } finally {
      this.memory.release(mark)
    }
  }

  private pack(series: readonly Int8Array[], { channels }: DtwOptions): Packed {
    const size = series[0]!.length
    const count = series.length
    const from = this.memory.putAll(series, size)
    const packed = this.memory.take(this.exports.pack_values(count, size) * 2)
    this.exports.pack(from, count, size, packed)
    const length = seriesLength(series[0]!, channels)
    return { series: from, packed, count, size, length, out: this.memory.take(count * 4) }
  }

  /** Distances of the series at `a` to the packed ones from `first` on; a view for now. */
  private rowOf(a: number, to: Packed, first: number, options: DtwOptions): Uint32Array {
    const { channels, band, cost } = options
    const { series, packed, count, length, out } = to
    this.exports.dtw_row(
      a,
      series,
      packed,
      first,
      count,
      length,
      channels,
      band,
      cost,
      out,
      this.row,
    )
    return this.memory.uint32(out, count)
  }
}

/** Series in the module, behind each other and packed. */
interface Packed {
  series: number
  packed: number
  count: number
  /** Values of one. */
  size: number
  length: number
  /** Room for a row of distances. */
  out: number
}

/** Rows and columns that are copied together, so that neither leaves the cache. */
const TILE = 32

/** Copies the upper half of an n × n table to the lower one. */
function mirrorUpper(table: Float64Array, n: number): void {
  for (let top = 0; top < n; top += TILE) {
    for (let left = top; left < n; left += TILE) {
      for (let i = top; i < Math.min(n, top + TILE); i++) {
        for (let j = Math.max(left, i + 1); j < Math.min(n, left + TILE); j++) {
          table[j * n + i] = table[i * n + j]!
        }
      }
    }
  }
}

/** WebAssembly gives int32: back to unsigned first. */
export function toDistance(value: number): number | null {
  const distance = value >>> 0
  return distance === NO_DISTANCE ? null : distance
}

export function seriesLength(series: Int8Array, channels: number): number {
  const length = series.length / channels
  if (!Number.isInteger(length) || length < 1 || length > MAX_LENGTH)
    throw new RangeError(`a series has 1 to ${MAX_LENGTH} points of ${channels} channels`)
  return length
}
