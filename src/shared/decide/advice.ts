import type { Rate } from '../model/evaluation'
import type { AdviceKind, PairReport } from './gesture-decision'
import type { MedianInterval } from './median-interval'

/** A way of looking tells two gestures apart well, or hardly better than a coin. */
const WELL = 0.9
const HARDLY = 0.85
/** By the course of rotation the other is at most this further than the own, ln: the course is the same. */
const SAME_COURSE = 0.45
/** Rate of turning from which on there is a course at all, rms an axis, deg/s: far above tremor. */
const TURNING_DPS = 6
/** And of one that is larger: nothing else may differ. */
const VERY_SAME_COURSE = 0.25
/** As compared, the other gesture is at most this further than the own, ln: hardly anything is left. */
const HARDLY_FURTHER = 0.25
/** One way tells them so much better than another, in shares, */
const CLEAR_GAP = 0.1
/** What is compared tells them by so much more than a number does that something else must help. */
const MORE_THAN_NUMBERS = 0.15
/** A single number tells them apart this often. */
const BY_NUMBER = 0.75
/** Takes, and share of them, in which a piece answers as the other. */
const PIECES = 3
const OFTEN_IN_PIECES = 0.1

/**
 * What is to be said of a pair, most useful first; null when the two are well apart. What tells the
 * two apart is found by taking things away: size and speed, the gyroscope, alignment.
 */
export function adviceFor(pair: Omit<PairReport, 'advice'>): AdviceKind | null {
  if (isOftenInPieces(pair)) return 'part'
  const { recogniser, accelerometer, unaligned } = pair.told
  if (recogniser === null || recogniser.n === 0) return null
  if (isSameCourse(pair) && !tellsMore(recogniser, pair)) {
    const number = speedOrSize(pair)
    if (number !== null) return number
  }
  if (unaligned !== null && isLostByAlignment(unaligned, recogniser, pair.margin)) return 'roll'
  if (accelerometer !== null && isClearlyBetter(recogniser, accelerometer)) return 'gyro'
  return recogniser.value <= HARDLY ? 'alike' : null
}

function isOftenInPieces({ pieces }: Omit<PairReport, 'advice'>): boolean {
  return pieces !== null && pieces.rate.hits >= PIECES && pieces.rate.value >= OFTEN_IN_PIECES
}

function isSameCourse({ courseMargin, turningDps }: Omit<PairReport, 'advice'>): boolean {
  return turningDps >= TURNING_DPS && courseMargin.value <= SAME_COURSE
}

/**
 * The same course, told by a number: a slower movement turns as far, a larger one further in the same
 * time. One that turns further and takes longer is another movement. A slow movement's faint ends may
 * not be cut out, so its size counts too.
 */
function speedOrSize(pair: Omit<PairReport, 'advice'>): 'speed' | 'size' | null {
  const { byDuration, bySize, byTurn, courseMargin } = pair
  const lasts = byDuration.value >= BY_NUMBER
  if (byTurn.value >= BY_NUMBER) {
    const larger = Math.min(byTurn.value, bySize.value) > byDuration.value
    return larger && courseMargin.value <= VERY_SAME_COURSE ? 'size' : null
  }
  return lasts || bySize.value >= BY_NUMBER ? 'speed' : null
}

/** What is compared tells the two apart by more than size and speed, such as how they are held. */
function tellsMore(recogniser: Rate, { byDuration, bySize }: Omit<PairReport, 'advice'>): boolean {
  return recogniser.value > Math.max(byDuration.value, bySize.value) + MORE_THAN_NUMBERS
}

function isLostByAlignment(unaligned: Rate, recogniser: Rate, margin: MedianInterval): boolean {
  const gap = unaligned.value - recogniser.value
  return unaligned.value >= WELL && gap >= CLEAR_GAP && margin.value <= HARDLY_FURTHER
}

function isClearlyBetter(one: Rate, than: Rate): boolean {
  return one.value >= WELL && one.low > than.high && one.value - than.value >= CLEAR_GAP
}
