import { apartCodes, type Example } from './examples'
import { slopedLog } from './template-loss'
import { type Examples, type Kin, View } from './template-view'

export interface TemplateLimits {
  perGesture: number
  /** All templates of the model together, from the budget in bytes. */
  total: number
}

/** A further template must lower the mean loss by at least this share to be worth its bytes. */
const LEAST_GAIN = 0.002
const SWAP_SWEEPS = 2

/**
 * Chooses which examples become templates. Starts from the medoid of every gesture (least sum of
 * distances to its other examples; Kaufman and Rousseeuw's k-medoids build step), adds whatever
 * lowers the loss most, then swaps while that helps. The loss is that of the nearest-template rule
 * itself, over all examples, in two views of equal weight: each judged only by templates of other
 * testers, so that a template serves people it does not come from; and by all but itself, so that a
 * manner which only one tester has is kept for the next who has it.
 * @param table distances between all examples, n × n
 * @returns indices of examples for each gesture, best first; empty for a gesture without examples
 */
export function chooseTemplates(
  table: Float64Array,
  examples: readonly Example[],
  gestureCount: number,
  limits: TemplateLimits,
): number[][] {
  const search = new TemplateSearch(table, examples, gestureCount)
  search.startFromMedoids()
  let total = search.chosen.flat().length
  let loss = search.loss()
  while (total < limits.total) {
    const added = search.bestAddition(limits.perGesture)
    if (added === null || loss - added.loss < LEAST_GAIN * loss) break
    search.add(added.example)
    loss = added.loss
    total++
  }
  for (let sweep = 0; sweep < SWAP_SWEEPS && search.swapOnce(); sweep++);
  return search.chosen
}

/** Candidates that are weighed before all others. */
const LIKELY = 6

/**
 * Sums that are put together from changes are this near, as a share, to those over all examples in
 * order; a candidate that is farther behind the best cannot win and is not summed in order.
 */
const SLACK = 1e-6

/** Examples, what is chosen of them, and what the choice costs. */
class TemplateSearch {
  readonly chosen: number[][]
  private readonly n: number
  private readonly all: Examples
  /** The first view's templates are among those of the second, so nothing is nearer in the first. */
  private readonly views: [View, View]
  private readonly gains: Float64Array
  /** Whether an example has nothing to be told from: then a foreign template may lower its loss. */
  private alone = false

  constructor(table: Float64Array, examples: readonly Example[], gestureCount: number) {
    this.n = examples.length
    this.all = examplesOf(table, examples, gestureCount)
    this.gains = new Float64Array(this.n)
    const each = Int32Array.from({ length: this.n }, (_, i) => i)
    this.views = [
      new View(this.all, apartCodes(examples), this.gains),
      new View(this.all, each, this.gains),
    ]
    this.chosen = Array.from({ length: gestureCount }, () => [])
  }

  startFromMedoids(): void {
    for (const [gesture, { members, distances }] of this.all.kin.entries()) {
      const sums = Array.from(members, (_, at) =>
        distances
          .subarray(at * members.length, (at + 1) * members.length)
          .reduce((sum, distance) => sum + distance, 0),
      )
      const medoid = members[sums.indexOf(Math.min(...sums))]
      if (medoid !== undefined) this.put(gesture, 0, medoid)
    }
    for (const view of this.views) view.begin()
    this.see()
  }

  add(example: number): void {
    const gesture = this.all.gestures[example]!
    this.put(gesture, this.chosen[gesture]!.length, example)
    this.see()
  }

  /** The example not yet chosen that lowers the loss most. */
  bestAddition(perGesture: number): { example: number; loss: number } | null {
    const open = Array.from({ length: this.n }, (_, example) => example).filter((example) => {
      const list = this.chosen[this.all.gestures[example]!]!
      return list.length < perGesture && !list.includes(example)
    })
    return this.bestOf(open, Number.POSITIVE_INFINITY, 0)
  }

  /** Replaces each template by the best other example of its gesture. Returns whether any was. */
  swapOnce(): boolean {
    let changed = false
    for (const [gesture, list] of this.chosen.entries()) {
      const { members } = this.all.kin[gesture]!
      for (let at = 0; at < list.length; at++) {
        const before = list[at]!
        const least = this.loss()
        const back = this.views.map((view) => view.remember())
        const gains = this.gains.slice()
        list.splice(at, 1)
        for (const view of this.views) view.exclude(before, this.chosen)
        this.see()
        const open = [...members].filter((member) => !list.includes(member))
        const best = this.bestOf(open, least, 1e-12)?.example ?? before
        if (best !== before) {
          this.put(gesture, at, best)
          changed = true
        } else {
          list.splice(at, 0, before)
          for (const bring of back) bring()
          this.gains.set(gains)
        }
        this.see()
      }
    }
    return changed
  }

  loss(): number {
    return this.lossWith(null)
  }

  /** The candidate with the least loss below `bound - step`, the first on a tie; null if none is. */
  private bestOf(candidates: readonly number[], bound: number, step: number) {
    const floors = candidates.map((example) => this.lossAtLeast(example))
    const slackBeyond = (loss: number) => loss + SLACK * (1 + loss)
    // Those that are likely to be good say early what the others have to beat.
    let known = bound
    for (const at of lowestOf(floors, LIKELY)) {
      known = Math.min(known, this.lossAbout(candidates[at]!, slackBeyond(known)))
    }
    let best: { example: number; loss: number } | null = null
    let least = bound
    for (const [at, example] of candidates.entries()) {
      const limit = slackBeyond(Math.min(least, known))
      if (floors[at]! > limit || this.lossAbout(example, limit) > limit) continue
      const loss = this.lossWith(example)
      if (loss < least - step) [least, best] = [loss, { example, loss }]
    }
    return best
  }

  /** Mean loss as it would be with one more template, every example in order. */
  private lossWith(template: number | null): number {
    let sum = 0
    for (const view of this.views) {
      for (let i = 0; i < this.n; i++) {
        const changed = template === null ? Number.NaN : view.lossAfter(i, template)
        sum += Number.isNaN(changed) ? view.losses[i]! : changed
      }
    }
    return sum / (this.n * this.views.length)
  }

  /** The same without what a template costs the examples of other gestures: never more, within SLACK. */
  private lossAtLeast(template: number): number {
    if (this.alone) return Number.NEGATIVE_INFINITY
    return (this.sum() + this.gains[template]!) / (this.n * this.views.length)
  }

  /** The same from what changes, which is little; some number beyond the limit when it is beyond. */
  private lossAbout(template: number, limit: number): number {
    const [strict, loose] = this.views
    const { table, gestures } = this.all
    const [row, gesture, parts] = [template * this.n, gestures[template]!, this.n * 2]
    // What it brings its own gesture is known, unless a foreign one may lower a loss too.
    const known = !this.alone
    const most = known ? limit * parts : Number.POSITIVE_INFINITY
    let sum = this.sum() + (known ? this.gains[template]! : 0)
    for (let i = 0; i < this.n && sum <= most; i++) {
      const distance = table[row + i]!
      const ours = gestures[i] === gesture
      // Nothing is nearer in the strict view, so what changes nothing there changes nothing.
      if ((ours && known) || distance >= (ours ? strict.own : strict.other)[i]!) continue
      sum += strict.gainAbout(i, template, distance) + loose.gainAbout(i, template, distance)
    }
    return sum / parts
  }

  private sum(): number {
    return this.views[0].sum + this.views[1].sum
  }

  private put(gesture: number, at: number, example: number): void {
    this.chosen[gesture]!.splice(at, 0, example)
    for (const view of this.views) view.include(example)
  }

  private see(): void {
    this.alone = !this.views[0].other.every(Number.isFinite)
  }
}

function examplesOf(
  table: Float64Array,
  examples: readonly Example[],
  gestureCount: number,
): Examples {
  const n = examples.length
  const gestures = Int32Array.from(examples, (example) => example.gesture)
  const place = new Int32Array(n)
  const kin = Array.from({ length: gestureCount }, (_, gesture): Kin => {
    const members = Int32Array.from([...gestures.keys()].filter((i) => gestures[i] === gesture))
    const m = members.length
    const [distances, logs] = [new Float64Array(m * m), new Float64Array(m * m)]
    for (const [at, i] of members.entries()) {
      place[i] = at
      for (let to = 0; to <= at; to++) {
        const distance = table[i * n + members[to]!]!
        distances[at * m + to] = distances[to * m + at] = distance
        logs[at * m + to] = logs[to * m + at] = slopedLog(distance)
      }
    }
    return { members, distances, logs }
  })
  return { table, gestures, kin, place }
}

/** Places of the least values, at most so many. */
function lowestOf(values: readonly number[], most: number): number[] {
  const lowest: number[] = []
  for (const [at, value] of values.entries()) {
    if (lowest.length === most && value >= values[lowest[most - 1]!]!) continue
    let to = lowest.length
    while (to > 0 && values[lowest[to - 1]!]! > value) to--
    lowest.splice(to, 0, at)
    lowest.length = Math.min(most, lowest.length)
  }
  return lowest
}
