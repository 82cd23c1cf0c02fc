import type {
  DataDecision,
  ExpectedGain,
  LearningCurve,
  NextKind,
} from '../../decide/data-decision'
import { hoursMissingToClaim } from '../../evaluation/trade-off'
import {
  countOf,
  durationText,
  percent,
  percentRange,
  plural,
  shortNumber,
  UNIT_SPACE,
} from './numbers'
import { overWhat } from './pair-words'

/** The one sentence on what to record next. */
export function dataSentence(data: DataDecision): string {
  const [first = 'nothing'] = data.next
  return nextSentence(data, first)
}

/** What one thing to record is expected to bring, and why. */
export function nextSentence(data: DataDecision, kind: NextKind): string {
  switch (kind) {
    case 'tester':
      return testerSentence(data)
    case 'takes':
      return takesSentence(data)
    case 'background':
      return backgroundSentence(data)
    case 'nothing':
      return 'Neither more takes nor another tester shows a gain beyond doubt: record where it will be used, or go on to the prop.'
  }
}

function testerSentence({ testers, byTesters }: DataDecision): string {
  if (testers.length < 2)
    return 'Every take is by one tester, so nothing is known about other hands: a second tester is worth most.'
  if (testers.length < 3)
    return 'With two testers each model learns from one: a third shows what further testers are worth.'
  return byTesters?.gain == null
    ? 'Another tester: what one brings cannot be estimated from these takes.'
    : `One more tester: estimated ${gainText(byTesters.gain)}.`
}

function takesSentence({ takes, errors, gestures }: DataDecision): string {
  const [worst] = errors
  const total = errors.reduce((sum, { wrong }) => sum + wrong, 0)
  const name = worst === undefined ? '' : (gestures[worst.gesture]?.name ?? '')
  const first =
    worst === undefined || worst.wrong === 0
      ? ''
      : ` Begin with ${name}: ${worst.wrong} of the ${plural('take', total)} that went wrong are of it.`
  const gain =
    takes?.gain == null
      ? 'what they bring cannot be estimated from so few'
      : `estimated ${gainText(takes.gain)}`
  return `2 more takes of each gesture by every tester: ${gain}.${first}`
}

function backgroundSentence({ background }: DataDecision): string {
  if (background === null)
    return 'There is no background: nobody knows how often the prop answers by mistake. Record 10 minutes of walking and talking.'
  const missing = hoursMissingToClaim(background, 1)
  if (missing === 0)
    return `Fewer than one false activation an hour can be claimed already (${background.activations} in ${durationText(background.hours * 3_600_000)}).`
  return `Background: ${background.activations} false activations in ${durationText(background.hours * 3_600_000)} give ${shortNumber(background.low)} to ${shortNumber(background.high)} an hour (95 %); ${hoursText(missing)} more without one would show fewer than one an hour.`
}

function hoursText(hours: number): string {
  return hours < 2 ? durationText(hours * 3_600_000) : `${shortNumber(hours)}${UNIT_SPACE}h`
}

/** A gain in points with its uncertainty; says so when it may be none. */
export function gainText({ value, low, high }: ExpectedGain): string {
  const points = (share: number) => String(Number((share * 100).toFixed(1))).replace('-', '−')
  const range = `${points(low)} to ${points(high)}`
  return low > 0
    ? `gain ${points(value)} points (${range})`
    : `gain ${points(value)} points, which may be none (${range})`
}

/** A curve in one sentence: where it stands, and where it came from. */
export function curveSentence(curve: LearningCurve, what: 'take' | 'tester'): string {
  const first = curve.points[0]!
  const last = curve.points.at(-1)!
  const at = (point: typeof first) =>
    `${percent(point.rate.value)} with ${plural(what, point.count)}`
  return `From ${at(first)} to ${at(last)} (${countOf(last.rate)}, ${percentRange(last.rate.low, last.rate.high)}).`
}

/** Why a curve is missing, and what to record to have it. */
export function missingCurve(what: 'take' | 'tester', { testers }: DataDecision): string {
  if (what === 'take')
    return 'Every tester has one take of each gesture, so there are no fewer to compare with: record 3 more of each.'
  return testers.length < 2
    ? 'One tester: what others add cannot be measured. Ask two more for takes.'
    : 'Two testers: each model learns from one, so there is no curve. Ask a third for takes.'
}

/** How the curves are drawn, before any is. */
export const DATA_ABOUT =
  'Trains on fewer takes and on fewer testers, drawn again and again, with a tester held out, or takes where there is one tester: whether more would help, and what to record next.'

export function dataBasis({ holdout, testers }: DataDecision): string {
  const held =
    holdout === 'tester'
      ? `${plural('tester', testers.length)}, each held out in turn (six at most)`
      : 'one tester, takes held out: a new hand will do worse'
  const ranges =
    holdout === 'tester' ? '; their ranges are 95 % by Student’s t over the held-out testers' : ''
  return `${held}. Points are means over three draws, the last has everything; bars are 95 %, ${overWhat({ holdout })}. Gains are drawn on from the curve as a power law: estimates, not measurements${ranges}.`
}
