import type { Core } from '../core/core'
import { seeTakes } from '../decide/seen-takes'
import type { FullLibrary } from '../model/library'
import { fail, ok, type Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'
import { median, medianAbsoluteDeviation } from '../statistics/summary'
import { distancesBetween, type Example } from '../training/examples'
import { readExamples, warpOf } from '../training/matcher-search'
import { prepareLibrary } from '../training/prepare'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { TAKES_COMPARED } from '../words/en/takes-compared'
import { groupTakes } from './group-takes'
import type { ComparedTake, TakesCompared } from './takes-compared'

/**
 * Robust z-score of the logarithm of the distance from which on a take is called far: 3.5, with 0.6745
 * over the median absolute deviation (Iglewicz and Hoaglin, How to Detect and Handle Outliers, 1993).
 */
export const OUTLIER_SCORE = 3.5
const MAD_TO_SD = 1.4826
/** A spread below 10 % is taken for 10 %: among takes that hardly differ none is far. */
const LEAST_SPREAD = 0.1
/** Fewer takes say nothing about what is usual. */
const LEAST_TAKES = 5
/** A take lies where its nearest three lie; one alone may be just as far out. */
const NEIGHBOURS = 3
/** Takes of each other gesture that a far one is held against. */
const SAMPLE = 16

/** Compares every take with the others of its gesture, by the distance that the recogniser uses. */
export function compareTakes(
  core: Core,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
): Result<TakesCompared> {
  const prepared = prepareLibrary(full)
  if (prepared.takes.length < 2) {
    return fail('collect/few-takes', TAKES_COMPARED.tooFew)
  }
  const total = prepared.gestures.length + 1
  onProgress({ done: 0, total, what: WORK_PROGRESS.cuttingTakes })
  const seen = seeTakes(core, prepared)
  const examples = readExamples(core, prepared, seen.segmenter, seen.matcher, seen.cuts)
  const warp = warpOf(seen.matcher)
  const judged = new Map<string, Judged>()
  for (const [gesture, { name }] of prepared.gestures.entries()) {
    onProgress({ done: gesture + 1, total, what: WORK_PROGRESS.comparingTakesOf(name) })
    const own = examples.filter((one) => one.gesture === gesture)
    for (const one of judgeGesture(distancesBetween(core, own, warp), own)) judged.set(one.id, one)
  }
  const nearerTo = (id: string) => {
    const example = examples.find((one) => one.id === id)
    if (example === undefined) return null
    const means = prepared.gestures.map((_, gesture) => {
      const others = examples.filter((one) => one.gesture === gesture && one.id !== id)
      const some = [example, ...thin(others)]
      const row = distancesBetween(core, some, warp).subarray(1, some.length)
      return row.length < NEIGHBOURS ? Number.POSITIVE_INFINITY : nearestMean([...row])
    })
    const nearest = means.indexOf(Math.min(...means))
    return nearest === example.gesture ? null : (prepared.gestures[nearest]?.id ?? null)
  }
  const takes = seen.cuts.map(({ take: { take }, result }): ComparedTake => {
    const { ratio = null, far = false } = judged.get(take.id) ?? {}
    const { id: takeId, gestureId, testerCode, hand } = take
    const facts = { takeId, gestureId, testerCode, hand, device: take.device.label }
    const { rateHz } = take.device
    return { ...facts, rateHz, ratio, far, cut: result.cut, nearer: far ? nearerTo(takeId) : null }
  })
  return ok({ takes, ...groupTakes(takes) })
}

interface Judged {
  id: string
  ratio: number | null
  far: boolean
}

function judgeGesture(table: Float64Array, examples: readonly Example[]): Judged[] {
  const n = examples.length
  const hasOthers = new Set(examples.map((one) => one.tester)).size > 1
  const logs = examples.map((example, i) => {
    const others = examples.flatMap((other, j) => {
      const isApart = hasOthers ? other.tester !== example.tester : i !== j
      return isApart ? [table[i * n + j]!] : []
    })
    return others.length === 0 ? Number.NaN : Math.log(Math.max(1, nearestMean(others)))
  })
  const known = logs.filter(Number.isFinite)
  const usual = median(known)
  const spread = Math.max(LEAST_SPREAD, MAD_TO_SD * medianAbsoluteDeviation(known))
  return examples.map(({ id }, i) => {
    const log = logs[i]!
    if (!Number.isFinite(log)) return { id, ratio: null, far: false }
    const far = known.length >= LEAST_TAKES && (log - usual) / spread > OUTLIER_SCORE
    return { id, ratio: Math.exp(log - usual), far }
  })
}

function nearestMean(distances: readonly number[]): number {
  const nearest = [...distances].sort((a, b) => a - b).slice(0, NEIGHBOURS)
  return nearest.reduce((sum, one) => sum + one, 0) / nearest.length
}

function thin<T>(items: readonly T[]): T[] {
  const step = Math.max(1, items.length / SAMPLE)
  return items.filter((_, i) => Math.floor(i / step) !== Math.floor((i - 1) / step))
}
