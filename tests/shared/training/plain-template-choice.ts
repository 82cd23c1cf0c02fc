import { apartness, type Example } from '../../../src/shared/training/examples'
import { logistic, logRatio } from '../../../src/shared/training/separation'

import type { TemplateLimits } from '../../../src/shared/training/template-choice'

/** Slope of the loss over log distance ratios: a lead of a third is worth about 2 : 1 odds ×10. */
const SLOPE = 8
/** Log ratio of an example that no template of its gesture may stand for. */
const UNSERVED = 1
/** A further template must lower the mean loss by at least this share to be worth its bytes. */
const LEAST_GAIN = 0.002
const SWAP_SWEEPS = 2

/** The choice of templates without any short cut: every loss summed over all examples. */
export function chooseTemplatesPlainly(
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

/** Distance of each example to the nearest templates that may stand for it. */
class View {
  readonly own: Float64Array
  readonly other: Float64Array

  constructor(
    readonly allows: (i: number, j: number) => boolean,
    n: number,
  ) {
    this.own = new Float64Array(n)
    this.other = new Float64Array(n)
    this.clear()
  }

  clear(): void {
    this.own.fill(Number.POSITIVE_INFINITY)
    this.other.fill(Number.POSITIVE_INFINITY)
  }
}

class TemplateSearch {
  readonly chosen: number[][]
  private readonly n: number
  private readonly gestures: Int32Array
  private readonly views: View[]

  constructor(
    private readonly table: Float64Array,
    examples: readonly Example[],
    gestureCount: number,
  ) {
    this.n = examples.length
    this.gestures = Int32Array.from(examples, (example) => example.gesture)
    this.views = [apartness(examples), (i: number, j: number) => i !== j].map(
      (allows) => new View(allows, this.n),
    )
    this.chosen = Array.from({ length: gestureCount }, () => [])
  }

  startFromMedoids(): void {
    for (const [gesture, list] of this.chosen.entries()) {
      const members = this.membersOf(gesture)
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
    let best: { example: number; loss: number } | null = null
    for (let example = 0; example < this.n; example++) {
      const list = this.chosen[this.gestures[example]!]!
      if (list.length >= perGesture || list.includes(example)) continue
      const loss = this.lossWith(example)
      if (best === null || loss < best.loss) best = { example, loss }
    }
    return best
  }

  /** Replaces each template by the best other example of its gesture. Returns whether any was. */
  swapOnce(): boolean {
    let changed = false
    for (const [gesture, list] of this.chosen.entries()) {
      const members = this.membersOf(gesture)
      for (let at = 0; at < list.length; at++) {
        const before = list[at]!
        let least = this.loss()
        let best = before
        list.splice(at, 1)
        this.recompute()
        for (const candidate of members) {
          if (list.includes(candidate)) continue
          const loss = this.lossWith(candidate)
          if (loss < least - 1e-12) [least, best] = [loss, candidate]
        }
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

  /** Mean loss as it would be with one more template. */
  private lossWith(template: number | null): number {
    let sum = 0
    for (const { allows, own, other } of this.views) {
      for (let i = 0; i < this.n; i++) {
        let [mine, theirs] = [own[i]!, other[i]!]
        if (template !== null && allows(i, template)) {
          const distance = this.table[i * this.n + template]!
          if (this.gestures[i] === this.gestures[template]) mine = Math.min(mine, distance)
          else theirs = Math.min(theirs, distance)
        }
        sum += exampleLoss(mine, theirs)
      }
    }
    return sum / (this.n * this.views.length)
  }

  private recompute(): void {
    for (const view of this.views) {
      view.clear()
      for (const template of this.chosen.flat()) this.include(view, template)
    }
  }

  private include({ allows, own, other }: View, template: number): void {
    for (let i = 0; i < this.n; i++) {
      if (!allows(i, template)) continue
      const distance = this.table[i * this.n + template]!
      const nearest = this.gestures[i] === this.gestures[template] ? own : other
      if (distance < nearest[i]!) nearest[i] = distance
    }
  }

  private membersOf(gesture: number): number[] {
    return [...this.gestures.keys()].filter((i) => this.gestures[i] === gesture)
  }
}

function exampleLoss(own: number, other: number): number {
  // With a single gesture there is no other: nearness alone counts then.
  if (!Number.isFinite(other)) return Number.isFinite(own) ? Math.log1p(own) : Math.log(0xffffffff)
  return logistic(SLOPE * (Number.isFinite(own) ? logRatio(own, other) : UNSERVED))
}
