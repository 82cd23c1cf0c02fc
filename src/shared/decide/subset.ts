/**
 * Which K of N gestures to keep. What counts is how often a held-out take is nearest to its own
 * gesture among those kept: every gesture weighs the same, and of equal sets the one whose worst pair
 * is told apart more often is taken.
 */

/** One take as the choice sees it. */
export interface Contest {
  gesture: number
  /** Gestures with an example at least as near as the nearest of its own; its own never among them. */
  beatenBy: readonly number[]
}

export interface Subset {
  /** Indices of gestures, ascending. */
  members: number[]
  /** Mean over the members of the share of their takes that win among them. */
  score: number
  /** Least share of takes told apart, over all pairs of members; 1 for one gesture. */
  worstPair: number
  /** Pair that it is of; null for one gesture. */
  worst: [number, number] | null
}

export interface SubsetChoice extends Subset {
  /** Whether no other set can be better. */
  proven: boolean
  /** No set of this size scores more than this; the score itself where proven. */
  bound: number
}

/** Sets looked at for one size before the search stops and says how much better another could be. */
const MOST_NODES = 40_000
const EPSILON = 1e-12

/** Best sets of sizes 2 to N, smallest first. A gesture without takes is never chosen. */
export function bestSubsets(contests: readonly Contest[], count: number): SubsetChoice[] {
  const search = new SubsetSearch(contests, count)
  const choices: SubsetChoice[] = []
  for (let size = 2; size <= search.candidates.length; size++) choices.push(search.best(size))
  return choices
}

/** Takes of one gesture that are beaten by the same gestures. */
interface Bundle {
  low: number
  high: number
  takes: number
}

export class SubsetSearch {
  /** Gestures with takes, most often right among all first: good sets are then met early. */
  readonly candidates: number[]
  readonly #bundles: Bundle[][]
  readonly #totals: number[]
  readonly #pairs: Float64Array
  readonly #count: number
  #nodes = 0

  constructor(contests: readonly Contest[], count: number) {
    this.#count = count
    this.#totals = Array.from({ length: count }, () => 0)
    this.#bundles = Array.from({ length: count }, () => [])
    for (const contest of contests) this.#add(contest)
    this.#pairs = new Float64Array(count * count).fill(1)
    for (let a = 0; a < count; a++)
      for (let b = 0; b < count; b++) if (a !== b) this.#pairs[a * count + b] = this.#told(a, b)
    const all = Array.from({ length: count }, (_, gesture) => gesture)
    this.candidates = all
      .filter((gesture) => this.#totals[gesture]! > 0)
      .sort((a, b) => this.#recall(b, all) - this.#recall(a, all) || a - b)
  }

  /** How good a given set is. */
  rate(members: readonly number[]): Subset {
    const sorted = [...members].sort((a, b) => a - b)
    const score = sorted.reduce((sum, g) => sum + this.#recall(g, sorted), 0) / sorted.length
    let worstPair = 1
    let worst: [number, number] | null = null
    for (const [i, a] of sorted.entries()) {
      for (const b of sorted.slice(i + 1)) {
        const told = this.#pairs[a * this.#count + b]!
        if (worst === null || told < worstPair) [worstPair, worst] = [told, [a, b]]
      }
    }
    return { members: sorted, score, worstPair, worst }
  }

  /** Branch and bound from a greedy set; what is left when it stops early is said in `bound`. */
  best(size: number): SubsetChoice {
    let best = this.#greedy(size)
    let bound = 0
    this.#nodes = 0
    const visit = (chosen: number[], from: number): void => {
      if (chosen.length === size) {
        const found = this.rate(chosen)
        if (isBetter(found, best)) best = found
        return
      }
      const upper = this.#upper(chosen, from, size)
      if (upper < best.score - EPSILON) return
      if (upper < best.score + EPSILON && this.#worstOf(chosen) <= best.worstPair) return
      if (this.#nodes++ >= MOST_NODES) {
        bound = Math.max(bound, upper)
        return
      }
      for (let at = from; at <= this.candidates.length - (size - chosen.length); at++)
        visit([...chosen, this.candidates[at]!], at + 1)
    }
    visit([], 0)
    const proven = bound <= best.score + EPSILON
    return { ...best, proven, bound: proven ? best.score : bound }
  }

  /** Drops whichever gesture leaves the best set, from all down to the size; then swaps while it helps. */
  #greedy(size: number): Subset {
    let now = this.rate(this.candidates)
    while (now.members.length > size) {
      const smaller = now.members.map((out) => this.rate(now.members.filter((g) => g !== out)))
      now = smaller.reduce((a, b) => (isBetter(b, a) ? b : a))
    }
    for (let changed = true; changed; ) {
      changed = false
      for (const out of now.members) {
        for (const into of this.candidates) {
          if (now.members.includes(into)) continue
          const swapped = this.rate([...now.members.filter((g) => g !== out), into])
          if (!isBetter(swapped, now)) continue
          now = swapped
          changed = true
          break
        }
        if (changed) break
      }
    }
    return now
  }

  /** No completion scores more: a gesture's takes win less often the more others there are. */
  #upper(chosen: readonly number[], from: number, size: number): number {
    const own = chosen.reduce((sum, gesture) => sum + this.#recall(gesture, chosen), 0)
    const others = this.candidates
      .slice(from)
      .map((gesture) => this.#recall(gesture, chosen))
      .sort((a, b) => b - a)
    const missing = size - chosen.length
    return (own + others.slice(0, missing).reduce((sum, share) => sum + share, 0)) / size
  }

  #worstOf(chosen: readonly number[]): number {
    return chosen.length < 2 ? 1 : this.rate(chosen).worstPair
  }

  #recall(gesture: number, among: readonly number[]): number {
    let [low, high] = [0, 0]
    for (const other of among) {
      if (other < 32) low |= 1 << other
      else high |= 1 << (other - 32)
    }
    let wins = 0
    for (const bundle of this.#bundles[gesture]!)
      if ((bundle.low & low) === 0 && (bundle.high & high) === 0) wins += bundle.takes
    return this.#totals[gesture] === 0 ? 0 : wins / this.#totals[gesture]!
  }

  /** Share of the takes of two gestures that are told apart when there are only these. */
  #told(a: number, b: number): number {
    const [first, second] = [this.#totals[a]!, this.#totals[b]!]
    if (first + second === 0) return 1
    const wins = this.#recall(a, [b]) * first + this.#recall(b, [a]) * second
    return wins / (first + second)
  }

  #add({ gesture, beatenBy }: Contest): void {
    let [low, high] = [0, 0]
    for (const other of beatenBy) {
      if (other < 32) low |= 1 << other
      else high |= 1 << (other - 32)
    }
    this.#totals[gesture]!++
    const bundles = this.#bundles[gesture]!
    const known = bundles.find((bundle) => bundle.low === low && bundle.high === high)
    if (known !== undefined) known.takes++
    else bundles.push({ low, high, takes: 1 })
  }
}

function isBetter(a: Subset, b: Subset): boolean {
  if (Math.abs(a.score - b.score) > EPSILON) return a.score > b.score
  return a.worstPair > b.worstPair + EPSILON
}
