import type { Evaluation } from '../model/evaluation'
import { PLACE_STEP } from '../words/en/place-step'
import { confusedPairSentence, mostConfusedPair } from './confused-pair'

/** What is worth doing after what a place is for; one sentence and where it is done. */
export interface PlaceStep {
  text: string
  action: string
  href: string
}

/**
 * The next useful step from a place other than Moves; null when what is there already says it.
 * @param takes in the library
 * @param evaluation the last one when it is still fresh, else null
 */
export function placeStep(
  place: 'try' | 'proof' | 'prop',
  takes: number,
  evaluation: Evaluation | null,
): PlaceStep | null {
  if (takes === 0) {
    return { ...PLACE_STEP.noTakes, href: '#/moves' }
  }
  if (evaluation === null) return unmeasured(place)
  if (place === 'prop') return null
  const pair = mostConfusedPair(evaluation)
  if (pair !== null && place === 'proof') {
    return { ...PLACE_STEP.decide, href: '#/decide' }
  }
  if (pair !== null) {
    const text = confusedPairSentence(evaluation, pair)
    return { text, action: PLACE_STEP.lookAtThem, href: '#/proof' }
  }
  return place === 'try'
    ? { ...PLACE_STEP.stage(evaluation.accuracy), href: '#/stage' }
    : { ...PLACE_STEP.report(evaluation.accuracy), href: '#/report' }
}

function unmeasured(place: 'try' | 'proof' | 'prop'): PlaceStep | null {
  if (place === 'proof') return null
  return {
    text: place === 'try' ? PLACE_STEP.otherHands : PLACE_STEP.changed,
    action: PLACE_STEP.measure,
    href: '#/proof',
  }
}
