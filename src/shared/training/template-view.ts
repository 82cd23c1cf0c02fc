import { exampleLoss, logisticAbout, slopedLog } from './template-loss'

/** Examples of one gesture, with the distances between them row by row. */
export interface Kin {
  members: Int32Array
  distances: Float64Array
  /** slopedLog of the distances. */
  logs: Float64Array
}

/** Examples and the distances between all of them, as all views see them. */
export interface Examples {
  /** n × n, symmetric: rows are read where a column is meant, as their numbers lie side by side. */
  table: Float64Array
  gestures: Int32Array
  /** By gesture. */
  kin: readonly Kin[]
  /** Place of each example among its kin. */
  place: Int32Array
}

/**
 * One way of judging examples: by which templates, and how well as things stand. What a further
 * template would bring its own gesture's examples is kept up to date with every change, as few
 * examples change at a time.
 */
export class View {
  /** Distance of each example to the nearest template that may stand for it: own gesture, others. */
  readonly own: Float64Array
  readonly other: Float64Array
  /** Loss of each example, and about their sum. */
  readonly losses: Float64Array
  sum = 0
  private hasBegun = false
  private readonly ownLog: Float64Array
  private readonly otherLog: Float64Array

  /**
   * @param codes a template stands for examples with another code than its own
   * @param gains of each example, for all views together: what it would add as a template to the
   *   loss of its own gesture, about
   */
  constructor(
    private readonly all: Examples,
    private readonly codes: Int32Array,
    private readonly gains: Float64Array,
  ) {
    const n = codes.length
    this.own = new Float64Array(n).fill(Number.POSITIVE_INFINITY)
    this.other = new Float64Array(n).fill(Number.POSITIVE_INFINITY)
    this.ownLog = this.own.slice()
    this.otherLog = this.own.slice()
    this.losses = new Float64Array(n)
  }

  /** Weighs what was included so far; what comes after changes little at a time. */
  begin(): void {
    for (let i = 0; i < this.losses.length; i++) {
      this.ownLog[i] = slopedLog(this.own[i]!)
      this.otherLog[i] = slopedLog(this.other[i]!)
      this.losses[i] = exampleLoss(this.own[i]!, this.other[i]!)
      this.sum += this.losses[i]!
      this.addGains(i, 1)
    }
    this.hasBegun = true
  }

  /** Takes account of one more template. */
  include(template: number): void {
    const { table, gestures } = this.all
    const row = template * this.codes.length
    for (let i = 0; i < this.codes.length; i++) {
      if (this.codes[i] === this.codes[template]) continue
      const distance = table[row + i]!
      const ours = gestures[i] === gestures[template]
      if (distance >= (ours ? this.own : this.other)[i]!) continue
      if (ours) this.settle(i, distance, this.other[i]!)
      else this.settle(i, this.own[i]!, distance)
    }
  }

  /** Takes account of a template that is one no more; those that are left are given by gesture. */
  exclude(template: number, left: readonly (readonly number[])[]): void {
    const { table, gestures } = this.all
    const row = template * this.codes.length
    for (let i = 0; i < this.codes.length; i++) {
      if (this.codes[i] === this.codes[template]) continue
      const ours = gestures[i] === gestures[template]
      if (table[row + i]! > (ours ? this.own : this.other)[i]!) continue
      if (ours) this.settle(i, this.nearest(i, [left[gestures[i]!]!]), this.other[i]!)
      else this.settle(i, this.own[i]!, this.nearest(i, others(left, gestures[i]!)))
    }
  }

  /** Keeps how things stand; the function given back brings that back, all but the common gains. */
  remember(): () => void {
    const { own, other, ownLog, otherLog, losses, sum } = this
    const arrays = [own, other, ownLog, otherLog, losses]
    const kept = arrays.map((array) => array.slice())
    return () => {
      for (const [i, array] of arrays.entries()) array.set(kept[i]!)
      this.sum = sum
    }
  }

  /** Loss of an example with one more template; NaN when that changes nothing. */
  lossAfter(i: number, template: number): number {
    const { table, gestures } = this.all
    const distance = table[template * this.codes.length + i]!
    const [mine, theirs] = [this.own[i]!, this.other[i]!]
    const ours = gestures[i] === gestures[template]
    if (distance >= (ours ? mine : theirs) || this.codes[i] === this.codes[template]) return NaN
    return ours ? exampleLoss(distance, theirs) : exampleLoss(mine, distance)
  }

  /** What one more template at that distance adds to an example's loss, about. */
  gainAbout(i: number, template: number, distance: number): number {
    const { gestures } = this.all
    const { own, other, codes, losses } = this
    const ours = gestures[i] === gestures[template]
    if (distance >= (ours ? own : other)[i]! || codes[i] === codes[template]) return 0
    // Where one side has no template at all the rule is another one.
    if (!Number.isFinite((ours ? other : own)[i]!)) {
      return (ours ? exampleLoss(distance, other[i]!) : exampleLoss(own[i]!, distance)) - losses[i]!
    }
    const log = slopedLog(distance)
    return logisticAbout(ours ? log - this.otherLog[i]! : this.ownLog[i]! - log) - losses[i]!
  }

  private nearest(i: number, templates: Iterable<readonly number[]>): number {
    let least = Number.POSITIVE_INFINITY
    for (const list of templates) {
      for (const template of list) {
        if (this.codes[i] === this.codes[template]) continue
        least = Math.min(least, this.all.table[template * this.codes.length + i]!)
      }
    }
    return least
  }

  private settle(i: number, own: number, other: number): void {
    if (own === this.own[i] && other === this.other[i]) return
    if (!this.hasBegun) {
      this.own[i] = own
      this.other[i] = other
      return
    }
    if (other === this.other[i] && Number.isFinite(other)) {
      this.moveOwn(i, own)
      return
    }
    this.addGains(i, -1)
    if (own !== this.own[i]) this.ownLog[i] = slopedLog(own)
    if (other !== this.other[i]) this.otherLog[i] = slopedLog(other)
    this.own[i] = own
    this.other[i] = other
    this.sum -= this.losses[i]!
    this.losses[i] = exampleLoss(own, other)
    this.sum += this.losses[i]!
    this.addGains(i, 1)
  }

  /**
   * Settles a new distance to the nearest template of the example's own gesture. What it would lose
   * with one of its kin as a template hangs on their distance alone, so that for those who are nearer
   * than before and after only the loss that this is compared with changes.
   */
  private moveOwn(i: number, own: number): void {
    const { kin, gestures, place } = this.all
    const { members, distances, logs } = kin[gestures[i]!]!
    const [code, row, otherLog] = [this.codes[i]!, place[i]! * members.length, this.otherLog[i]!]
    const [before, old] = [this.own[i]!, this.losses[i]!]
    const loss = exampleLoss(own, this.other[i]!)
    const [near, far] = [Math.min(before, own), Math.max(before, own)]
    for (let at = 0; at < members.length; at++) {
      const distance = distances[row + at]!
      const template = members[at]!
      if (distance >= far || this.codes[template] === code) continue
      if (distance < near) this.gains[template]! += old - loss
      else {
        const after = logisticAbout(logs[row + at]! - otherLog)
        this.gains[template]! += own > before ? after - loss : old - after
      }
    }
    this.own[i] = own
    this.ownLog[i] = slopedLog(own)
    this.losses[i] = loss
    this.sum += loss - old
  }

  /** Adds `times` what each of the example's kin would change in its loss as a template. */
  private addGains(i: number, times: number): void {
    const { kin, gestures, place } = this.all
    const { members, distances, logs } = kin[gestures[i]!]!
    const [own, other, otherLog] = [this.own[i]!, this.other[i]!, this.otherLog[i]!]
    const [loss, code, row] = [this.losses[i]!, this.codes[i]!, place[i]! * members.length]
    const isTold = Number.isFinite(other)
    for (let at = 0; at < members.length; at++) {
      const distance = distances[row + at]!
      const template = members[at]!
      if (distance >= own || this.codes[template] === code) continue
      const after = isTold
        ? logisticAbout(logs[row + at]! - otherLog)
        : exampleLoss(distance, other)
      this.gains[template]! += times * (after - loss)
    }
  }
}

function* others(lists: readonly (readonly number[])[], gesture: number) {
  for (const [at, list] of lists.entries()) if (at !== gesture) yield list
}
