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

/** With so many candidates at most, every set that could be best is looked at: up to 2^16 of them. */
const FEW = 16
/** Sets looked at for one size before the search stops and says how much better another could be. */
const MOST_NODES = { few: 70_000, many: 2_000 }
const EPSILON = 1e-12
const SWAP_SWEEPS = 3

/**
 * Best sets of sizes 2 to N, smallest first. A gesture without takes is never chosen.
 * @param thorough false: greedy sets alone, without a proof, for when it is done many times
 */
export function bestSubsets(
  contests: readonly Contest[],
  count: number,
  thorough = true,
): SubsetChoice[] {
  const search = new SubsetSearch(contests, count)
  const choices: SubsetChoice[] = []
  let larger = search.rate(search.candidates)
  for (let size = search.candidates.length; size >= 2; size--) {
    larger = search.greedy(size, larger)
    if (thorough) larger = search.best(size, larger)
    choices.unshift({ bound: 1, proven: false, ...larger })
  }
  return choices
}

/** A set of up to 64 gestures. */
interface Mask {
  low: number
  high: number
}

function maskOf(gestures: readonly number[]): Mask {
  let [low, high] = [0, 0]
  for (const gesture of gestures) {
    if (gesture < 32) low |= 1 << gesture
    else high |= 1 << (gesture - 32)
  }
  return { low, high }
}

/** Takes of one gesture that are beaten by the same gestures. */
interface Bundle extends Mask {
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
    const whole = maskOf(all)
    this.candidates = all
      .filter((gesture) => this.#totals[gesture]! > 0)
      .sort((a, b) => this.#recall(b, whole) - this.#recall(a, whole) || a - b)
  }

  /** How good a given set is. */
  rate(members: readonly number[]): Subset {
    const sorted = [...members].sort((a, b) => a - b)
    const mask = maskOf(sorted)
    const score = sorted.reduce((sum, g) => sum + this.#recall(g, mask), 0) / sorted.length
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

  /** Branch and bound from a good set; what is left when it stops early is said in `bound`. */
  best(size: number, from = this.greedy(size, this.rate(this.candidates))): SubsetChoice {
    let best: Subset = from
    let bound = 0
    this.#nodes = 0
    const most = this.candidates.length <= FEW ? MOST_NODES.few : MOST_NODES.many
    const visit = (chosen: number[], from: number): void => {
      if (chosen.length === size) {
        const found = this.rate(chosen)
        if (isBetter(found, best)) best = found
        return
      }
      const upper = this.#upper(chosen, from, size)
      if (upper < best.score - EPSILON) return
      if (upper < best.score + EPSILON && this.#worstOf(chosen) <= best.worstPair) return
      this.#nodes++
      for (let at = from; at <= this.candidates.length - (size - chosen.length); at++) {
        if (this.#nodes >= most) {
          // What is left below here can reach this much.
          bound = Math.max(bound, upper)
          return
        }
        visit([...chosen, this.candidates[at]!], at + 1)
      }
    }
    visit([], 0)
    const proven = bound <= best.score + EPSILON
    return { ...best, proven, bound: proven ? best.score : bound }
  }

  /** Drops whichever gesture leaves the best set, down to the size; then swaps while it helps. */
  greedy(size: number, from: Subset): Subset {
    let now = from
    while (now.members.length > size) {
      let smaller: Subset | null = null
      for (const out of now.members)
        smaller = this.#better(
          smaller,
          now.members.filter((gesture) => gesture !== out),
        )
      now = smaller!
    }
    for (let sweep = 0; sweep < SWAP_SWEEPS; sweep++) {
      const before = now
      for (const out of before.members) {
        const rest = now.members.filter((gesture) => gesture !== out)
        if (rest.length === now.members.length) continue
        for (const into of this.candidates)
          if (!now.members.includes(into)) now = this.#better(now, [...rest, into])!
      }
      if (now === before) break
    }
    return now
  }

  /** The better of a set and another, whose pairs are looked at only when its score is as good. */
  #better(known: Subset | null, members: readonly number[]): Subset | null {
    if (known !== null) {
      const mask = maskOf(members)
      const sum = members.reduce((total, gesture) => total + this.#recall(gesture, mask), 0)
      if (sum / members.length < known.score - EPSILON) return known
    }
    const other = this.rate(members)
    return known === null || isBetter(other, known) ? other : known
  }

  /** No completion scores more: a gesture's takes win less often the more others there are. */
  #upper(chosen: readonly number[], from: number, size: number): number {
    const mask = maskOf(chosen)
    const own = chosen.reduce((sum, gesture) => sum + this.#recall(gesture, mask), 0)
    const others = this.candidates
      .slice(from)
      .map((gesture) => this.#recall(gesture, mask))
      .sort((a, b) => b - a)
    const missing = size - chosen.length
    return (own + others.slice(0, missing).reduce((sum, share) => sum + share, 0)) / size
  }

  #worstOf(chosen: readonly number[]): number {
    return chosen.length < 2 ? 1 : this.rate(chosen).worstPair
  }

  #recall(gesture: number, among: Mask): number {
    let wins = 0
    for (const bundle of this.#bundles[gesture]!)
      if ((bundle.low & among.low) === 0 && (bundle.high & among.high) === 0) wins += bundle.takes
    return this.#totals[gesture] === 0 ? 0 : wins / this.#totals[gesture]!
  }

  /** Share of the takes of two gestures that are told apart when there are only these. */
  #told(a: number, b: number): number {
    const [first, second] = [this.#totals[a]!, this.#totals[b]!]
    if (first + second === 0) return 1
    const wins = this.#recall(a, maskOf([b])) * first + this.#recall(b, maskOf([a])) * second
    return wins / (first + second)
  }

  #add({ gesture, beatenBy }: Contest): void {
    const { low, high } = maskOf(beatenBy)
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
