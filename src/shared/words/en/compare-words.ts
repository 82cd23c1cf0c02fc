import type { Comparison, Flip } from '../../compare/compare-evaluations'
import { mcnemarExact } from '../../statistics/mcnemar'
import { percent, plural, UNIT_SPACE } from './numbers'
import { overTakesWords, testerSignWords } from './tester-words'

/** A comparison in sentences. */
export interface CompareWords {
  changed: string
  /** What it means, in one sentence. */
  means: string
  /** The counts that say so. */
  evidence: string
  todo: string
}

const LEVEL = 0.05

/**
 * @param changes as `changesBetween` gives them
 * @param names of the two, as they are called beside the figures
 */
export function compareWords(
  comparison: Comparison,
  changes: readonly string[],
  names: [string, string] = ['A', 'B'],
): CompareWords {
  return {
    changed: changedWords(changes, names),
    means: verdict(comparison, names),
    evidence: evidenceWords(comparison, names),
    todo: todoWords(comparison, names),
  }
}

function changedWords(changes: readonly string[], [first, second]: [string, string]): string {
  return changes.length === 0
    ? `Nothing is different between ${first} and ${second} that training reads.`
    : `From ${first} to ${second}: ${changes.join('; ')}.`
}

function evidenceWords(comparison: Comparison, [first, second]: [string, string]): string {
  const { onlyFirst, onlySecond, first: a, second: b } = comparison
  const shares = `Of ${plural('take', a.n)} held out in both, ${first} had ${a.hits} right and ${second} ${b.hits}`
  if (onlyFirst + onlySecond === 0) {
    return `${shares}: not one answer went from right to wrong or back.`
  }
  const flips = `${onlySecond} put right, ${onlyFirst} newly wrong`
  const { holdout, p, testers } = comparison
  const difference = `difference ${gainText(comparison)}, ${overTakesWords(holdout)}`
  const evidence = `${shares}: ${flips}. Exact McNemar p${UNIT_SPACE}=${UNIT_SPACE}${pText(p)}; ${difference}.`
  return `${evidence} ${testerSignWords(holdout, testers)}`.trimEnd()
}

function verdict(comparison: Comparison, [first, second]: [string, string]): string {
  const { p, onlyFirst, onlySecond } = comparison
  if (onlyFirst + onlySecond === 0) return `${first} and ${second} are right about the same takes.`
  if (p >= LEVEL) return `Chance alone explains what ${first} and ${second} have apart.`
  const [better, worse] = onlySecond > onlyFirst ? [second, first] : [first, second]
  return `${better} is better than ${worse} by more than chance explains.`
}

/** '2.4 points, 95 % interval 0.6 to 4.5'. */
export function gainText({ loss }: Comparison): string {
  const points = (share: number) => Math.abs(share * 100).toFixed(1)
  const ends = [loss.low, loss.high].map((share) => Math.sign(loss.value || 1) * share * 100)
  const [low, high] = ends.sort((x, y) => x - y).map((end) => end.toFixed(1))
  return `${points(loss.value)} points, 95${UNIT_SPACE}% interval ${low} to ${high}`
}

/** Two digits; below a thousandth only that. */
export function pText(p: number): string {
  if (p < 0.001) return '< 0.001'.replace('< ', '<\u202f')
  return String(Number(p.toPrecision(2)))
}

function todoWords(comparison: Comparison, [first, second]: [string, string]): string {
  const { p, onlyFirst, onlySecond } = comparison
  if (onlyFirst + onlySecond === 0)
    return `Keep whichever costs less; nothing here speaks for either.`
  if (p < LEVEL) {
    const worst = commonest(comparison.flips.filter(({ better }) => !better))
    const keep =
      onlySecond > onlyFirst ? `Keep ${second}.` : `Go back to ${first}, or undo what changed.`
    return worst === null ? keep : `${keep} Look first at ${worst}.`
  }
  return `Do not choose by this. ${enoughWords(onlyFirst, onlySecond, comparison.first.n)}`
}

/** How many takes would tell a difference like the one seen, if it is real. */
function enoughWords(onlyFirst: number, onlySecond: number, n: number): string {
  if (onlyFirst === onlySecond) return 'As many were put right as went wrong.'
  for (let times = 1.5; times <= 20; times += 0.5) {
    if (mcnemarExact(Math.round(onlyFirst * times), Math.round(onlySecond * times)) < LEVEL) {
      return `If it goes on like this, about ${plural('take', Math.ceil((n * times) / 10) * 10)} would tell.`
    }
  }
  return 'Even twenty times as many takes would hardly tell a difference this small.'
}

/** The kind of flip that comes most often: 'Ring, of which 3 takes are now answered Swing'. */
function commonest(flips: readonly Flip[]): string | null {
  const counts = new Map<string, { flip: Flip; count: number }>()
  for (const flip of flips) {
    const kind = `${flip.performed} ${flip.second}`
    counts.set(kind, { flip, count: (counts.get(kind)?.count ?? 0) + 1 })
  }
  const [best] = [...counts.values()].sort((x, y) => y.count - x.count)
  if (best === undefined) return null
  const { flip, count } = best
  return `${flip.performed}, of which ${plural('take', count)} ${count === 1 ? 'is' : 'are'} now answered ${flip.second ?? 'none'}`
}

/** What was left out of the comparison and why; '' when nothing was. */
export function notComparedWords(
  { notCompared }: Comparison,
  [first, second]: [string, string] = ['A', 'B'],
): string {
  const { onlyInFirst, onlyInSecond, trainedOn, relabelled } = notCompared
  const parts = [
    ...(onlyInFirst > 0 ? [`${plural('take', onlyInFirst)} only ${first} had`] : []),
    ...(onlyInSecond > 0 ? [`${plural('take', onlyInSecond)} only ${second} had`] : []),
    ...(trainedOn > 0
      ? [`${plural('take', trainedOn)} that one of them trained on and never held out`]
      : []),
    ...(relabelled > 0 ? [`${plural('take', relabelled)} relabelled between them`] : []),
  ]
  return parts.length === 0 ? '' : `Not compared: ${parts.join(', ')}.`
}

/** Whether the question itself changed, which makes shares move without any take being to blame. */
export function gestureWords(
  { gesturesOnlyFirst, gesturesOnlySecond }: Comparison,
  [first, second]: [string, string] = ['A', 'B'],
): string {
  const parts = [
    ...(gesturesOnlyFirst.length > 0
      ? [`${first} alone knew ${gesturesOnlyFirst.join(', ')}`]
      : []),
    ...(gesturesOnlySecond.length > 0
      ? [`${second} alone knew ${gesturesOnlySecond.join(', ')}`]
      : []),
  ]
  if (parts.length === 0) return ''
  return `${parts.join('; ')}: the more gestures to choose from, the harder each take is.`
}

/** One flip: 'Ring: Swing before, right now'. */
export function flipText({ performed, first, second, better }: Flip): string {
  return better
    ? `${performed}: ${first ?? 'none'} before, right now`
    : `${performed}: right before, ${second ?? 'none'} now`
}

/** One model's share on the takes compared, for a label. */
export function shareText(hits: number, n: number): string {
  return `${percent(hits / n)} of ${n}`
}
