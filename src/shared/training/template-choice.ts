import { apartness, type Example } from './examples'
import { logistic, logRatio } from './separation'

export interface TemplateLimits {
  perGesture: number
  /** All templates of the model together, from the budget in bytes. */
  total: number
}

/** Slope of the loss over log distance ratios: a lead of a third is worth about 2 : 1 odds ×10. */
const SLOPE = 8
/** Log ratio of an example that no template of its gesture may stand for. */
const UNSERVED = 1
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

/**
 * Sums that are put together from changes are this near, as a share, to those over all examples in
 * order; a candidate that is farther behind the best cannot win and is not summed in order.
 */
const SLACK = 1e-6

/** Logistic loss from -LOGISTIC_ENDS to LOGISTIC_ENDS by straight lines between so many points a unit. */
const LOGISTIC_ENDS = 40
const LOGISTIC_STEPS = 1024
const LOGISTIC = Float64Array.from({ length: 2 * LOGISTIC_ENDS * LOGISTIC_STEPS + 2 }, (_, at) =>
  logistic(at / LOGISTIC_STEPS - LOGISTIC_ENDS),
)

/** Off by less than 1e-7: the curve's second derivative is at most 1/4. */
function logisticAbout(x: number): number {
  if (x >= LOGISTIC_ENDS) return x
  if (x <= -LOGISTIC_ENDS) return 0
  const at = (x + LOGISTIC_ENDS) * LOGISTIC_STEPS
  const below = Math.trunc(at)
  const low = LOGISTIC[below]!
  return low + (at - below) * (LOGISTIC[below + 1]! - low)
}

/** One way of judging examples: by which templates, and how well as things stand. */
class View {
  /** Distance of each example to the nearest template that may stand for it: own gesture, others. */
  readonly own: Float64Array
  readonly other: Float64Array
  /** SLOPE times their logarithms. */
  readonly ownLog: Float64Array
  readonly otherLog: Float64Array
  /** Loss of each example, and of all. */
  readonly losses: Float64Array
  sum = 0

  constructor(
    readonly allows: (i: number, j: number) => boolean,
    n: number,
  ) {
    this.own = new Float64Array(n)
    this.other = new Float64Array(n)
    this.ownLog = new Float64Array(n)
    this.otherLog = new Float64Array(n)
    this.losses = new Float64Array(n)
  }
}

class TemplateSearch {
  readonly chosen: number[][]
  private readonly n: number
  private readonly gestures: Int32Array
  /** The first view's templates are among those of the second, so nothing is nearer in the first. */
  private readonly views: [View, View]
  /** SLOPE times the logarithms of the table. */
  private readonly logs: Float64Array
  /** Whether an example has nothing to be told from: then a foreign template may lower its loss. */
  private alone = false
  /** Examples of each gesture. */
  private readonly members: number[][]
  /** For each gesture, below which distance its template changes anything for an example. */
  private readonly limits: Float64Array[]

  constructor(
    /** Symmetric: rows are read where a column is meant, as their numbers lie side by side. */
    private readonly table: Float64Array,
    examples: readonly Example[],
    gestureCount: number,
  ) {
    this.n = examples.length
    this.gestures = Int32Array.from(examples, (example) => example.gesture)
    this.views = [new View(apartness(examples), this.n), new View((i, j) => i !== j, this.n)]
    this.logs = table.map(slopedLog)
    this.members = Array.from({ length: gestureCount }, (_, gesture) => {
      return [...this.gestures.keys()].filter((i) => this.gestures[i] === gesture)
    })
    this.limits = Array.from({ length: gestureCount }, () => new Float64Array(this.n))
    this.chosen = Array.from({ length: gestureCount }, () => [])
  }

  startFromMedoids(): void {
    for (const [gesture, list] of this.chosen.entries()) {
      const members = this.members[gesture]!
      const sums = members.map((i) =>
        members.reduce((sum, j) => sum + this.table[i * this.n + j]!, 0),
      )
      const medoid = members[sums.indexOf(Math.min(...sums))]
      if (medoid !== undefined) list.push(medoid)
    }
    this.recompute()
  }

  add(example: number): void {
    this.chosen[this.gestures[example]!]!.push(example)
    this.recompute()
  }

  /** The example not yet chosen that lowers the loss most. */
  bestAddition(perGesture: number): { example: number; loss: number } | null {
    const open = Array.from({ length: this.n }, (_, example) => example).filter((example) => {
      const list = this.chosen[this.gestures[example]!]!
      return list.length < perGesture && !list.includes(example)
    })
    return this.bestOf(open, Number.POSITIVE_INFINITY, 0)
  }

  /** Replaces each template by the best other example of its gesture. Returns whether any was. */
  swapOnce(): boolean {
    let changed = false
    for (const [gesture, list] of this.chosen.entries()) {
      const members = this.members[gesture]!
      for (let at = 0; at < list.length; at++) {
        const before = list[at]!
        const least = this.loss()
        list.splice(at, 1)
        this.recompute()
        const open = members.filter((member) => !list.includes(member))
        const best = this.bestOf(open, least, 1e-12)?.example ?? before
        list.splice(at, 0, best)
        this.recompute()
        changed ||= best !== before
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
    const lowest = floors.indexOf(Math.min(...floors))
    // One that is likely to be good says early what the others have to beat.
    const known = lowest < 0 ? bound : Math.min(bound, this.lossWith(candidates[lowest]!))
    let best: { example: number; loss: number } | null = null
    let least = bound
    for (const [at, example] of candidates.entries()) {
      const limit = Math.min(least, known) + SLACK * (1 + known)
      if (floors[at]! > limit || this.lossAbout(example) > limit) continue
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
        const changed = template === null ? Number.NaN : this.lossAfter(view, i, template)
        sum += Number.isNaN(changed) ? view.losses[i]! : changed
      }
    }
    return sum / (this.n * this.views.length)
  }

  /** The same without what a template costs the examples of other gestures: never more, within SLACK. */
  private lossAtLeast(template: number): number {
    if (this.alone) return Number.NEGATIVE_INFINITY
    const row = template * this.n
    let sum = this.views[0].sum + this.views[1].sum
    for (const i of this.members[this.gestures[template]!]!) {
      const distance = this.table[row + i]!
      for (const view of this.views) {
        sum += this.gainAbout(view, i, template, distance, this.logs[row + i]!)
      }
    }
    return sum / (this.n * this.views.length)
  }

  /** The same from what changes, which is little. */
  private lossAbout(template: number): number {
    const limit = this.limits[this.gestures[template]!]!
    const row = this.table.subarray(template * this.n, (template + 1) * this.n)
    let sum = this.views[0].sum + this.views[1].sum
    const logs = this.logs.subarray(template * this.n, (template + 1) * this.n)
    for (let i = 0; i < row.length; i++) {
      if (row[i]! >= limit[i]!) continue
      for (const view of this.views) sum += this.gainAbout(view, i, template, row[i]!, logs[i]!)
    }
    return sum / (this.n * this.views.length)
  }

  /** What one more template at that distance adds to an example's loss. */
  private gainAbout(
    { allows, own, other, ownLog, otherLog, losses }: View,
    i: number,
    template: number,
    distance: number,
    log: number,
  ): number {
    const ours = this.gestures[i] === this.gestures[template]
    if (distance >= (ours ? own : other)[i]! || !allows(i, template)) return 0
    // Where one side has no template at all the rule is another one.
    if (!Number.isFinite((ours ? other : own)[i]!)) {
      const changed = ours ? exampleLoss(distance, other[i]!) : exampleLoss(own[i]!, distance)
      return changed - losses[i]!
    }
    const x = ours ? log - otherLog[i]! : ownLog[i]! - log
    return logisticAbout(x) - losses[i]!
  }

  /** Loss of an example with one more template; NaN when that changes nothing. */
  private lossAfter({ allows, own, other }: View, i: number, template: number): number {
    const distance = this.table[template * this.n + i]!
    const [mine, theirs] = [own[i]!, other[i]!]
    const ours = this.gestures[i] === this.gestures[template]
    if (distance >= (ours ? mine : theirs) || !allows(i, template)) return Number.NaN
    return ours ? exampleLoss(distance, theirs) : exampleLoss(mine, distance)
  }

  private recompute(): void {
    for (const view of this.views) {
      view.own.fill(Number.POSITIVE_INFINITY)
      view.other.fill(Number.POSITIVE_INFINITY)
      for (const template of this.chosen.flat()) this.include(view, template)
      view.sum = 0
      for (let i = 0; i < this.n; i++) {
        view.losses[i] = exampleLoss(view.own[i]!, view.other[i]!)
        view.ownLog[i] = slopedLog(view.own[i]!)
        view.otherLog[i] = slopedLog(view.other[i]!)
        view.sum += view.losses[i]!
      }
    }
    const { own, other } = this.views[0]
    this.alone = !other.every(Number.isFinite)
    for (const [gesture, limit] of this.limits.entries()) {
      for (let i = 0; i < this.n; i++) limit[i] = this.gestures[i] === gesture ? own[i]! : other[i]!
    }
  }

  private include({ allows, own, other }: View, template: number): void {
    for (let i = 0; i < this.n; i++) {
      const distance = this.table[template * this.n + i]!
      const nearest = this.gestures[i] === this.gestures[template] ? own : other
      if (distance < nearest[i]! && allows(i, template)) nearest[i] = distance
    }
  }
}

function slopedLog(distance: number): number {
  return SLOPE * Math.log(Math.max(1, distance))
}

function exampleLoss(own: number, other: number): number {
  // With a single gesture there is no other: nearness alone counts then.
  if (!Number.isFinite(other)) return Number.isFinite(own) ? Math.log1p(own) : Math.log(0xffffffff)
  return logistic(SLOPE * (Number.isFinite(own) ? logRatio(own, other) : UNSERVED))
}
