import type { Core } from '../../shared/core/core'
import { encodeModel } from '../../shared/format/model-bytes'
import type { Rate } from '../../shared/model/evaluation'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { wilson } from '../../shared/statistics/wilson'
import { defaultTarget } from '../../shared/target/default-target'
import { cuttingModel } from '../../shared/training/cutting-model'
import type { Example } from '../../shared/training/examples'
import type { Matcher } from '../../shared/training/matcher-search'
import type { CutSeries } from '../datasets/cut-series'

/** What the core makes of series that are already cut. */
export function examplesOf(
  core: Core,
  series: readonly CutSeries[],
  matcher: Matcher,
  target = defaultTarget(),
): Example[] {
  const labels = labelsOf(series)
  core.load(encodeModel(cuttingModel(target, { normaliser: matcher.normaliser })))
  return series.map(({ label, tester, counts }, index) => {
    core.classify(counts, null)
    return { id: String(index), gesture: labels.indexOf(label), tester, query: core.query() }
  })
}

/** Share of series that the model names rightly. */
export function namedRightly(core: Core, model: RecogniserModel, test: readonly CutSeries[]): Rate {
  core.load(encodeModel(model))
  const hits = test.filter(({ label, counts }) => {
    const { kind, gesture } = core.classify(counts, null)
    return kind === 'gesture' && gesture !== null && model.gestures[gesture]?.id === label
  })
  return wilson(hits.length, test.length)
}

export function labelsOf(series: readonly CutSeries[]): string[] {
  return [...new Set(series.map(({ label }) => label))].sort()
}

/** At most `count` items, evenly spread over the list. */
export function thinned<T>(items: readonly T[], count: number): T[] {
  if (items.length <= count) return [...items]
  return Array.from({ length: count }, (_, i) => items[Math.floor((i * items.length) / count)]!)
}
