import type { BackgroundScore } from '../../model/evaluation'
import { shortNumber } from './numbers'

/** On the screen that compares two kept models. */
export const COMPARE_SCREENS = {
  title: 'Models compared',
  noLibrary: 'There is no library open.',
  toMoves: 'Go to Moves',
  holdOut: 'Hold out',
  about:
    'Every model that is trained is kept here with how it did. Change something, measure again, and see which takes went from wrong to right, which the other way, and whether that is more than chance.',
  oneMeasured: 'One model is measured so far: change takes or settings, then measure again.',
  noneMeasured: 'No model is measured yet.',
  measure: 'Measure on Proof',
  sameModel: 'A and B are the same model: choose two.',
  first: 'A',
  second: 'B',
  right: 'Right, on the same takes',
  resemble:
    'Takes of one tester resemble each other, so p and the intervals say somewhat more than is sure.',
  newlyWrong: 'Newly wrong',
  putRight: 'Put right',
  activations: ({ activations, hours, perHour, low, high }: BackgroundScore) =>
    `${activations} in ${shortNumber(hours * 60)} min (${shortNumber(perHour)} an hour, 95 % interval ${shortNumber(low)} to ${shortNumber(high)})`,
  falseActivations: (first: string, second: string) =>
    `False activations: A ${first}, B ${second}.`,
  notHere: (flip: string) => `${flip}; no longer in the library`,
  kept: {
    title: 'Kept models',
    hint: (most: number) => `The last ${most} are kept; those you pin stay until you remove them.`,
    pin: 'Pin',
    unpin: 'Unpin',
    remove: 'Remove',
  },
}
