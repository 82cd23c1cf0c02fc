import type { Example } from '../examples'
import { without } from './groups'

/** Chooses templates among some examples: for each class, their indices. */
export type ChooseAmong = (rows: readonly number[]) => number[][]

/** Of the farthest distance seen: stands for that of an example to a class without a template. */
const BEYOND = 1.5

/**
 * ln(1 + distance) of every example to each class's nearest template, row-major, where the templates
 * are chosen again without the example's group: an example stands for a movement yet to come.
 * @param table distances between examples, n × n
 */
export function heldOutLogDistances(
  table: Float64Array,
  count: number,
  classCount: number,
  groups: readonly number[][],
  choose: ChooseAmong,
): Float64Array {
  const distances = new Float64Array(count * classCount)
  for (const group of groups) {
    const chosen = choose(without(group, count))
    for (const i of group) {
      for (const [g, templates] of chosen.entries()) {
        const nearest = Math.min(...templates.map((j) => table[i * count + j]!))
        distances[i * classCount + g] = nearest
      }
    }
  }
  const largest = distances.reduce((most, d) => (Number.isFinite(d) ? Math.max(most, d) : most), 1)
  return distances.map((value) => Math.log(1 + Math.min(value, BEYOND * largest)))
}

/**
 * Templates that stand for the examples of their own class: one by one the example that brings the
 * sum of distances to the nearest template down most (build step of k-medoids, Kaufman and
 * Rousseeuw 1990), the same number for each class.
 */
export function coverTemplates(
  table: Float64Array,
  examples: readonly Example[],
  classCount: number,
  perClass: number,
  rows: readonly number[],
): number[][] {
  return Array.from({ length: classCount }, (_, g) => {
    const members = rows.filter((row) => examples[row]!.gesture === g)
    const nearest = new Map(members.map((row) => [row, Number.POSITIVE_INFINITY]))
    const chosen: number[] = []
    while (chosen.length < Math.min(perClass, members.length)) {
      const next = bestAddition(table, examples.length, members, nearest, chosen)
      chosen.push(next)
      for (const row of members) {
        nearest.set(row, Math.min(nearest.get(row)!, table[row * examples.length + next]!))
      }
    }
    return chosen
  })
}

function bestAddition(
  table: Float64Array,
  n: number,
  members: readonly number[],
  nearest: ReadonlyMap<number, number>,
  chosen: readonly number[],
): number {
  let best = members[0]!
  let least = Number.POSITIVE_INFINITY
  for (const candidate of members) {
    if (chosen.includes(candidate)) continue
    let sum = 0
    for (const row of members) sum += Math.min(nearest.get(row)!, table[row * n + candidate]!)
    if (sum < least) [least, best] = [sum, candidate]
  }
  return best
}
