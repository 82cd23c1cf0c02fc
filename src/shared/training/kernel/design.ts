import { type Algebra, MAX_POOLS } from '../../core/core'
import type { ByteMatrix, CountTable } from './design-matrix'

/** Least variance of a column: one that never changes must not be divided by nought. */
const LEAST_VARIANCE = 1e-3

/**
 * Counts of kernel features with their columns standardised, and the products of all pairs of rows.
 * A column is known by its place in the table of counts, so that choices which have columns in common
 * also share their products.
 */
export class Design {
  readonly rows: number
  /** Of every column of the table, and what it is divided by. */
  readonly means: Float64Array
  readonly scales: Float64Array
  private readonly known = new Map<string, Float64Array>()
  private readonly edges: number[]

  /**
   * @param order of the design's rows, as rows of the table
   * @param asked numbers of features that may be asked for, to share products between them
   */
  constructor(
    private readonly table: CountTable,
    readonly order: readonly number[],
    asked: readonly number[],
    private readonly algebra: Algebra,
  ) {
    this.rows = table.rows
    this.edges = [...new Set(asked)].sort((a, b) => a - b)
    const { sums, squares } = sumsOf(table)
    this.means = Float64Array.from(sums, (sum) => sum / table.rows)
    this.scales = Float64Array.from(squares, (square, c) => {
      const variance = square / table.rows - this.means[c]! ** 2
      return Math.sqrt(Math.max(variance, LEAST_VARIANCE))
    })
  }

  /**
   * Products of all pairs of rows over the first features and pools, as a mean over the columns: the
   * lower half, rows in the design's order.
   */
  gram(features: number, pools: number): Float64Array {
    const parts: Float64Array[] = []
    let from = 0
    for (const edge of [...this.edges.filter((edge) => edge < features), features]) {
      if (edge > from) parts.push(this.products(from, edge, 0, 2))
      from = edge
    }
    if (pools > 2) parts.push(this.products(0, features, 2, pools))
    const gram = new Float64Array(this.rows * this.rows)
    for (const part of parts) addLower(gram, part, this.rows)
    divideLower(gram, features * pools, this.rows)
    return gram
  }

  /** Places in the table of the columns of the first features and pools, feature by feature. */
  columnsOf(features: number, pools: number): Int32Array {
    return placesOf(0, features, 0, pools)
  }

  /** The counts themselves, of the same columns, rows in the table's order. */
  counts(features: number, pools: number): ByteMatrix {
    const { rows } = this
    const places = this.columnsOf(features, pools)
    const values = new Uint8Array(rows * places.length)
    const all = this.table.features * MAX_POOLS
    for (let i = 0; i < rows; i++) {
      const own = this.table.counts.subarray(i * all, (i + 1) * all)
      pick(own, places, values.subarray(i * places.length, (i + 1) * places.length))
    }
    return { rows, columns: places.length, values }
  }

  private products(from: number, to: number, firstPool: number, pools: number): Float64Array {
    const key = `${from} ${to} ${firstPool}`
    const known = this.known.get(key)
    if (known) return known
    const places = placesOf(from, to, firstPool, pools)
    const all = this.table.features * MAX_POOLS
    const means = Float64Array.from(places, (place) => this.means[place]!)
    const scales = Float64Array.from(places, (place) => this.scales[place]!)
    const standard = new Float32Array(this.rows * places.length)
    for (let i = 0; i < this.rows; i++) {
      const own = this.table.counts.subarray(this.order[i]! * all, (this.order[i]! + 1) * all)
      const to = standard.subarray(i * places.length, (i + 1) * places.length)
      standardise(own, places, means, scales, to)
    }
    const made = this.algebra.gram(standard, this.rows)
    this.known.set(key, made)
    return made
  }
}

/** Sums over the rows of every column, and of its squares: 66,000 rows of bytes fit. */
function sumsOf({ rows, features, counts }: CountTable) {
  const columns = features * MAX_POOLS
  const [sums, squares] = [new Uint32Array(columns), new Uint32Array(columns)]
  for (let i = 0, at = 0; i < rows; i++) {
    for (let c = 0; c < columns; c++, at++) {
      const value = counts[at]!
      sums[c]! += value
      squares[c]! += value * value
    }
  }
  return { sums, squares }
}

// A row a call: loops of their own, so that they are compiled early and read no fields within.

function standardise(
  counts: Uint8Array,
  places: Int32Array,
  means: Float64Array,
  scales: Float64Array,
  to: Float32Array,
): void {
  for (let c = 0; c < places.length; c++) to[c] = (counts[places[c]!]! - means[c]!) / scales[c]!
}

function pick(counts: Uint8Array, places: Int32Array, to: Uint8Array): void {
  for (let c = 0; c < places.length; c++) to[c] = counts[places[c]!]!
}

/** Adds the lower half of a matrix of n × n to another's. */
function addLower(to: Float64Array, from: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let at = i * n; at <= i * n + i; at++) to[at]! += from[at]!
  }
}

function divideLower(values: Float64Array, by: number, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let at = i * n; at <= i * n + i; at++) values[at]! /= by
  }
}

function placesOf(from: number, to: number, firstPool: number, pools: number): Int32Array {
  const each = pools - firstPool
  return Int32Array.from({ length: (to - from) * each }, (_, c) => {
    return (from + Math.floor(c / each)) * MAX_POOLS + firstPool + (c % each)
  })
}
