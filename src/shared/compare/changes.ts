import { type ComparedSetting, MODEL_CHANGES } from '../words/en/model-changes'
import type { KeptTake, ModelBasis } from './model-basis'

/** What of the library and its settings is different between two models, as clauses for people. */
export function changesBetween(first: ModelBasis, second: ModelBasis): string[] {
  return [
    ...takeChanges(first.takes, second.takes),
    ...gestureChanges(first, second),
    ...valueChanges(first, second),
    ...(first.core === second.core ? [] : [MODEL_CHANGES.otherCore]),
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
    ...(added.length > 0 ? [MODEL_CHANGES.more(added.length, testersOf(added))] : []),
    ...(gone.length > 0 ? [MODEL_CHANGES.fewer(gone.length, testersOf(gone))] : []),
    ...(changed > 0 ? [MODEL_CHANGES.relabelled(changed)] : []),
  ]
}

function without(takes: readonly KeptTake[], others: readonly KeptTake[]): KeptTake[] {
  const ids = new Set(others.map(({ id }) => id))
  return takes.filter(({ id }) => !ids.has(id))
}

function testersOf(takes: readonly KeptTake[]): string[] {
  return [...new Set(takes.map(({ testerCode }) => testerCode))].sort()
}

function gestureChanges(first: ModelBasis, second: ModelBasis): string[] {
  const names = (own: ModelBasis, other: ModelBasis) =>
    own.gestures
      .filter(({ id }) => other.gestures.every((gesture) => gesture.id !== id))
      .map(({ name }) => name)
  const [gone, added] = [names(first, second), names(second, first)]
  return [
    ...(added.length > 0 ? [MODEL_CHANGES.with(added)] : []),
    ...(gone.length > 0 ? [MODEL_CHANGES.without(gone)] : []),
  ]
}

function valueChanges(first: ModelBasis, second: ModelBasis): string[] {
  const [a, b] = [first.training, second.training]
  const pairs: [ComparedSetting, unknown, unknown][] = [
    ['templatesPerGesture', a.templatesPerGesture, b.templatesPerGesture],
    ['length', a.length, b.length],
    ['bandShare', a.bandShare, b.bandShare],
    ['rollAlign', a.rollAlign, b.rollAlign],
    ['segmentation', a.segmentation, b.segmentation],
    ['thresholdFactor', a.thresholdFactor, b.thresholdFactor],
    ['matcher', a.matcher ?? 'template', b.matcher ?? 'template'],
    ['rateHz', first.target.rateHz, second.target.rateHz],
    ['accelFullScale', first.target.accelFullScale, second.target.accelFullScale],
    ['gyroFullScale', first.target.gyroFullScale, second.target.gyroFullScale],
    ['backgrounds', first.backgrounds, second.backgrounds],
  ]
  return pairs
    .filter(([, before, after]) => before !== after)
    .map(([what, before, after]) => MODEL_CHANGES.setting(what, before, after))
}
