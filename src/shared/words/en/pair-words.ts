import type { AdviceKind, GestureDecision, PairReport } from '../../decide/gesture-decision'
import { apartBy } from '../../decide/profiles'
import { AXIS_NAMES } from '../../model/sample'
import { furthest } from '../../present/furthest-apart'
import { pairsInOrder } from '../../present/pairs-in-order'
import { countOf, durationText, percent, percentRange, plural, shortNumber } from './numbers'

/** Axes of a profile, in words. */
export const AXIS_WORDS: Record<(typeof AXIS_NAMES)[number], string> = {
  ax: 'acceleration x',
  ay: 'acceleration y',
  az: 'acceleration z',
  gx: 'rotation x',
  gy: 'rotation y',
  gz: 'rotation z',
}

/** Standard deviations from which two means count as apart, and below which as alike. */
const APART = 2
const ALIKE = 1

const TITLES: Record<AdviceKind, string> = {
  speed: 'only speed',
  size: 'only size',
  roll: 'only the turn in the hand',
  gyro: 'only the gyroscope',
  part: 'one is in the other',
  alike: 'hardly anything',
}

/** What tells the two apart, in a few words for a list. */
export function adviceTitle(kind: AdviceKind): string {
  return kind === 'part' ? TITLES[kind] : `told apart by ${TITLES[kind]}`
}

/** What was seen, what it means, what to do. */
export function adviceText(decision: GestureDecision, pair: PairReport): string {
  const [a, b] = [pair.first, pair.second].map((i) => decision.gestures[i]?.name ?? '')
  const own = pair.told.recogniser
  const seen = own === null ? '' : rateText(own)
  switch (pair.advice) {
    case 'speed':
      return `${a} and ${b} turn in the same course; they differ in speed (${durations(decision, pair)}). Compared as the prop does, ${seen} are told apart. A hurried hand does the one for the other: make one clearly slower, or drop it.`
    case 'size':
      return `${a} and ${b} turn in the same course; they differ in size alone. Compared as the prop does, ${seen} are told apart. Small and large are judged differently by every tester: give one another path, or drop it.`
    case 'roll':
      return `${a} and ${b} differ in how the prop is turned about its long axis, and alignment by gravity takes that away: ${seen} are told apart with it, ${rateText(pair.told.unaligned!)} without. Put a mark on the prop and switch roll alignment off on Prop, or give one another path.`
    case 'gyro':
      return `${a} and ${b} need the gyroscope: ${seen} are told apart with it, ${rateText(pair.told.accelerometer!)} by the accelerometer alone. Keep a part with six axes, or give one a path that tilts or jerks.`
    case 'part':
      return piecesText(decision, pair)
    case 'alike':
      return `${a} and ${b} are hardly told apart by anything measured: ${seen}. Give one another path, or drop it.`
    case null:
      return `${a} and ${b} are well apart: ${seen} are nearer to their own.`
  }
}

function piecesText({ gestures }: GestureDecision, { pieces }: PairReport): string {
  if (pieces === null) return ''
  const [whole, part] = [pieces.whole, pieces.part].map((i) => gestures[i]?.name ?? '')
  return `In ${rateText(pieces.rate)} of ${whole} a piece was cut out and answered as ${part}: a hand that halts inside ${whole} performs ${part}. Make ${whole} one movement without a halt, let it begin differently, or drop one.`
}

function rateText(rate: { value: number; hits: number; n: number; low: number; high: number }) {
  return `${percent(rate.value)} of held-out takes (${countOf(rate)}, ${percentRange(rate.low, rate.high)})`
}

function durations({ profiles }: GestureDecision, { first, second }: PairReport): string {
  const of = (gesture: number) => {
    const spread = profiles.find((profile) => profile.gesture === gesture)?.durationMs
    return spread === undefined ? 'not known' : durationText(spread.middle)
  }
  return `median ${of(first)} and ${of(second)}`
}

/** In which part of the movement and on which axes two gestures differ, and where they do not. */
export function whereText(decision: GestureDecision, pair: PairReport): string {
  const { channels, length } = decision
  const [a, b] = [pair.first, pair.second].map((gesture) =>
    decision.profiles.find((profile) => profile.gesture === gesture),
  )
  if (a === undefined || b === undefined) return ''
  const most = furthest(a, b, channels)
  if (most === null) return ''
  const apart = apartBy(a, b)
  const peaks = Array.from({ length: channels }, (_, axis) =>
    Math.max(...apart.filter((_, at) => at % channels === axis)),
  )
  const alike = peaks.flatMap((peak, axis) => (peak < ALIKE ? [axisWord(axis)] : []))
  const same = alike.length === 0 ? '' : ` Alike all along on ${alike.join(', ')}.`
  if (most.apart < APART) {
    return `No axis stands clearly apart at any point: at most ${shortNumber(most.apart)} standard deviations, on ${axisWord(most.axis)}.${same}`
  }
  const share = apart.filter((value) => value >= APART).length / apart.length
  return `Furthest apart ${placeWord(most.point, length)} on ${axisWord(most.axis)}: ${shortNumber(most.apart)} standard deviations within a gesture; ${percent(share)} of all points and axes are at least ${APART} apart.${same}`
}

export function axisWord(axis: number): string {
  const name = AXIS_NAMES[axis]
  return name === undefined ? `channel ${axis + 1}` : AXIS_WORDS[name]
}

function placeWord(point: number, length: number): string {
  const place = (point + 0.5) / length
  return place < 1 / 3 ? 'at the beginning' : place < 2 / 3 ? 'in the middle' : 'at the end'
}

/** The one sentence on which gestures are told apart. */
export function gesturesSentence(decision: GestureDecision): string {
  const pairs = pairsInOrder(decision)
  const [first] = pairs
  if (first === undefined) return 'No pair of gestures could be compared: no movement was cut out.'
  const names = [first.first, first.second]
    .map((i) => decision.gestures[i]?.name ?? '')
    .join(' and ')
  const advised = pairs.filter(({ advice }) => advice !== null).length
  if (advised > 0) {
    return `${plural('pair', advised)} of ${pairs.length} ${advised === 1 ? 'needs' : 'need'} a decision, ${names} first: ${adviceTitle(first.advice!)}.`
  }
  const rate = first.told.recogniser
  const nearest =
    rate === null
      ? ''
      : `, told apart in ${percent(rate.value)} (${countOf(rate)}, ${percentRange(rate.low, rate.high)}) of held-out takes`
  return pairs.length === 1
    ? `${names} are well apart${nearest}.`
    : `All ${pairs.length} pairs are well apart; the nearest are ${names}${nearest}.`
}

/** What intervals of shares are taken over. */
export function overWhat({ holdout }: { holdout: 'tester' | 'take' }): string {
  return holdout === 'tester' ? 'over testers' : 'over takes of the one tester'
}

/** What the shares rest on. */
export function gesturesBasis(decision: GestureDecision): string {
  const held =
    decision.holdout === 'tester'
      ? `each take measured with takes of other testers, ${plural('tester', decision.testers.length)}`
      : 'each take measured with other takes of the one tester there is: a new hand will do worse'
  const uncut =
    decision.uncut === 0
      ? ''
      : `; ${plural('take', decision.uncut)} without a movement cut out left aside`
  return `${plural('take', decision.takes)}, ${held}${uncut}; how takes are cut and compared was learned on all of them. Intervals are 95 %, ${overWhat(decision)}.`
}
