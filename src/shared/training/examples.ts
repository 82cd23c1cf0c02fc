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
  const testers = new Set(examples.map((example) => example.tester))
  if (testers.size < 2) return (i, j) => i !== j
  const ids = new Map([...testers].map((tester, index) => [tester, index]))
  const tester = Int32Array.from(examples, (example) => ids.get(example.tester)!)
  return (i, j) => tester[i] !== tester[j]
}
