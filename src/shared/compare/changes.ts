import { plural } from '../words/en/numbers'
import type { KeptTake, ModelBasis } from './model-basis'

/** What of the library and its settings is different between two models, as clauses for people. */
export function changesBetween(first: ModelBasis, second: ModelBasis): string[] {
  return [
    ...takeChanges(first.takes, second.takes),
    ...gestureChanges(first, second),
    ...valueChanges(first, second),
    ...(first.core === second.core ? [] : ['another version of the recogniser']),
  ]
}

function takeChanges(first: readonly KeptTake[], second: readonly KeptTake[]): string[] {
  const added = without(second, first)
  const gone = without(first, second)
  const byId = new Map(first.map((take) => [take.id, take]))
  const changed = second.filter(({ id, gestureId }) => {
    const before = byId.get(id)
    return before !== undefined && before.gestureId !== gestureId
  }).length
  return [
    ...(added.length > 0 ? [`${plural('take', added.length)} more${testersOf(added)}`] : []),
    ...(gone.length > 0 ? [`${plural('take', gone.length)} fewer${testersOf(gone)}`] : []),
    ...(changed > 0 ? [`${plural('take', changed)} relabelled`] : []),
  ]
}

function without(takes: readonly KeptTake[], others: readonly KeptTake[]): KeptTake[] {
  const ids = new Set(others.map(({ id }) => id))
  return takes.filter(({ id }) => !ids.has(id))
}

const MOST_NAMED = 3

function testersOf(takes: readonly KeptTake[]): string {
  const codes = [...new Set(takes.map(({ testerCode }) => testerCode))].sort()
  return codes.length > MOST_NAMED
    ? ` by ${plural('tester', codes.length)}`
    : ` by ${codes.join(', ')}`
}

function gestureChanges(first: ModelBasis, second: ModelBasis): string[] {
  const names = (own: ModelBasis, other: ModelBasis) =>
    own.gestures
      .filter(({ id }) => other.gestures.every((gesture) => gesture.id !== id))
      .map(({ name }) => name)
  const [gone, added] = [names(first, second), names(second, first)]
  return [
    ...(added.length > 0 ? [`with ${added.join(', ')}`] : []),
    ...(gone.length > 0 ? [`without ${gone.join(', ')}`] : []),
  ]
}

function valueChanges(first: ModelBasis, second: ModelBasis): string[] {
  const [a, b] = [first.training, second.training]
  const pairs: [string, unknown, unknown][] = [
    ['templates a gesture', a.templatesPerGesture, b.templatesPerGesture],
    ['points', a.length, b.length],
    ['band', a.bandShare, b.bandShare],
    ['roll aligned', a.rollAlign, b.rollAlign],
    ['cut by', a.segmentation, b.segmentation],
    ['threshold factor', a.thresholdFactor, b.thresholdFactor],
    ['matcher', a.matcher ?? 'template', b.matcher ?? 'template'],
    ['rate, Hz', first.target.rateHz, second.target.rateHz],
    ['accelerometer, g', first.target.accelFullScale, second.target.accelFullScale],
    ['gyroscope, °/s', first.target.gyroFullScale, second.target.gyroFullScale],
    ['background recordings', first.backgrounds, second.backgrounds],
  ]
  return pairs
    .filter(([, before, after]) => before !== after)
    .map(([what, before, after]) => `${what} ${said(before)} → ${said(after)}`)
}

function said(value: unknown): string {
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value)
}
