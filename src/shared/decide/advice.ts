import type { Rate } from '../model/evaluation'
import type { AdviceKind, PairReport } from './gesture-decision'

/** A way of looking tells two gestures apart well, or hardly better than a coin. */
const WELL = 0.9
const HARDLY = 0.85
/** One way tells them so much better than another, in shares, */
const CLEAR_GAP = 0.1
/** A single number tells them apart this often. */
const BY_NUMBER = 0.8
/** Share of takes, with the certainty of its interval, in which a piece answers as the other. */
const OFTEN_IN_PIECES = 0.05

/**
 * What is to be said of a pair, most useful first; null when the two are well apart. What tells the
 * two apart is found by taking things away: size and speed, the gyroscope, alignment.
 */
export function adviceFor(pair: Omit<PairReport, 'advice'>): AdviceKind | null {
  if (pair.pieces !== null && pair.pieces.rate.low >= OFTEN_IN_PIECES) return 'part'
  const { recogniser, shape, accelerometer, unaligned } = pair.told
  if (recogniser === null || recogniser.n === 0) return null
  if (shape !== null && shape.value <= HARDLY && !tellsMore(recogniser, pair)) {
    if (pair.byDuration.value >= BY_NUMBER) return 'speed'
    if (pair.bySize.value >= BY_NUMBER) return 'size'
  }
  if (unaligned !== null && isClearlyBetter(unaligned, recogniser) && recogniser.value <= HARDLY)
    return 'roll'
  if (accelerometer !== null && isClearlyBetter(recogniser, accelerometer)) return 'gyro'
  return recogniser.value <= HARDLY ? 'alike' : null
}

/** What is compared tells the two apart by more than size and speed, such as how they are held. */
function tellsMore(recogniser: Rate, { byDuration, bySize }: Omit<PairReport, 'advice'>): boolean {
  return recogniser.value > Math.max(byDuration.value, bySize.value) + CLEAR_GAP
}

function isClearlyBetter(one: Rate, than: Rate): boolean {
  return one.value >= WELL && one.low > than.high && one.value - than.value >= CLEAR_GAP
}
