import type { Evaluation } from '../model/evaluation'
import { countOf } from '../words/en/numbers'
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
    const text = 'There are no takes yet, and everything here is made from them.'
    return { text, action: 'Record takes on Moves', href: '#/moves' }
  }
  if (evaluation === null) return unmeasured(place)
  if (place === 'prop') return null
  const pair = mostConfusedPair(evaluation)
  if (pair !== null && place === 'proof') {
    const text = 'Other gestures, more takes, another sensor: see which would help most.'
    return { text, action: 'Decide what to change', href: '#/decide' }
  }
  if (pair !== null) {
    const text = confusedPairSentence(evaluation, pair)
    return { text, action: 'Look at them', href: '#/proof' }
  }
  const understood = `${countOf(evaluation.accuracy)} held-out takes were understood.`
  return place === 'try'
    ? { text: `${understood} Show it.`, action: 'Stage', href: '#/stage' }
    : { text: `${understood} Put it on one page.`, action: 'Report', href: '#/report' }
}

function unmeasured(place: 'try' | 'proof' | 'prop'): PlaceStep | null {
  if (place === 'proof') return null
  const text =
    place === 'try'
      ? 'What works in one hand may fail in another: measure with takes left out.'
      : 'Not measured since the last change: nobody knows how often this firmware will be right.'
  return { text, action: 'Measure it', href: '#/proof' }
}
