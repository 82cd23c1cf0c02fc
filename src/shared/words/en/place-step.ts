import type { Rate } from '../../model/evaluation'
import { countOf } from './numbers'

/** What is worth doing after what a place is for, and what its button says. */
export const PLACE_STEP = {
  noTakes: {
    text: 'There are no takes yet, and everything here is made from them.',
    action: 'Record takes on Moves',
  },
  decide: {
    text: 'Other gestures, more takes, another sensor: see which would help most.',
    action: 'Decide what to change',
  },
  lookAtThem: 'Look at them',
  stage: (accuracy: Rate) => ({
    text: `${countOf(accuracy)} held-out takes were understood. Show it.`,
    action: 'Stage',
  }),
  report: (accuracy: Rate) => ({
    text: `${countOf(accuracy)} held-out takes were understood. Put it on one page.`,
    action: 'Report',
  }),
  otherHands: 'What works in one hand may fail in another: measure with takes left out.',
  changed:
    'Not measured since the last change: nobody knows how often this firmware will be right.',
  measure: 'Measure it',
}
