import type { Core } from '../core/core'

/** A movement with its truth, as the core normalised it. */
export interface Example {
  /** Recording it came from. */
  id: string
  gesture: number
  tester: string
  query: Int8Array
}

export interface WarpSettings {
  channels: number
  band: number
  cost: 0 | 1
}

/** Distances between all examples, n × n row-major. */
export function distancesBetween(
  core: Core,
  examples: readonly Example[],
  settings: WarpSettings,
): Float64Array {
  return core.distances(
    examples.map((example) => example.query),
    settings,
  )
}

/**
 * Which pairs may be compared when examples stand for movements yet to come: those of different
 * testers where a gesture has more than one, else just different takes. Measuring a tester by their
 * own other takes would promise a new tester too much.
 */
export function apartness(examples: readonly Example[]): (i: number, j: number) => boolean {
  const codes = apartCodes(examples)
  return (i, j) => codes[i] !== codes[j]
}

/** The same as codes: those pairs whose codes differ. */
export function apartCodes(examples: readonly Example[]): Int32Array {
  const testers = [...new Set(examples.map((example) => example.tester))]
  if (testers.length < 2) return Int32Array.from(examples, (_, i) => i)
  const ids = new Map(testers.map((tester, index) => [tester, index]))
  return Int32Array.from(examples, (example) => ids.get(example.tester)!)
}
