import type { Evaluation, Rate } from '../../model/evaluation'
import { ageText } from './age-words'
import { countOf, percentRange, plural, shortNumber, UNIT_SPACE } from './numbers'
import { measuredSentence } from './trust'

/** Why figures are not fresh. */
const STALE = {
  library: 'Takes or settings have changed since: these figures are of the library before.',
  app: 'Another version of the app measured it, and this one may find other figures on the same takes: measure again.',
}

/** Read on Proof. */
export const PROOF = {
  backgroundTitle: 'When nobody means it',
  noBackground:
    'No background was recorded, so false activations are not known. Walk and talk with the prop for ten minutes on Moves.',
  falseActivations: 'False activations',
  anHour: 'an hour',
  poissonInterval: (low: number, high: number) =>
    `95 % interval ${hourlyRange(low, high)} (exact Poisson)`,
  falseActivationsDescribed: (perHour: number, low: number, high: number) =>
    `False activations: ${shortNumber(perHour)} an hour, 95 % interval ${hourlyRange(low, high)}`,
  hourlyMax: (perHour: number) => `${shortNumber(perHour)} an hour`,
  backgroundCounted: (activations: number, hours: number, segments: number) =>
    `${plural('activation', activations)} in ${shortNumber(hours)} h of background; ${plural('movement', segments)} were cut out of it. Never trained on where it is counted.`,
  answeredNone: (performed: string) => `${performed}, answered none`,
  answeredNoneShort: 'none',
  understood: (performed: string) => `${performed}, understood`,
  answered: (performed: string, gesture: string) => `${performed}, answered ${gesture}`,
  cutOutOfTheStream: 'Cut out of the stream',
  cuttingByButton: (marginMs: number) =>
    `By the button, held as each take is trimmed; a take without trim is taken to be held from ${marginMs}${UNIT_SPACE}ms before its motion until ${marginMs}${UNIT_SPACE}ms after. A hand that presses otherwise does otherwise.`,
  cuttingLead:
    'A take should be found as one movement. Of a split one the longest piece decides; missed, too long and too short ones are answered with none. With 95 % Wilson intervals.',
  cellTitle: 'Takes behind the count',
  cellIsOld: 'This count is not of the measurement at hand.',
  goToProof: 'Go to Proof',
  title: 'Proof',
  noTakes: 'There are no takes to measure with.',
  recordTakes: 'Record takes on Moves',
  basis: (gestures: number, takes: number, testers: number) =>
    `${plural('gesture', gestures)}, ${plural('take', takes)}, ${plural('tester', testers)}`,
  holdOut: 'Hold out',
  toDecide: 'Decide: which gestures, how much data, which sensor',
  toCompare: 'What changed: two models on the same takes',
  toGrip: 'Grip tolerance: how far may it turn in the hand?',
  toReport: 'Report: all of it on one page, to print or keep',
  oneTester:
    'Every take is by one tester, so no tester can be left out. Ask a second one for takes, or hold out takes.',
  measureAgain: 'Measure again',
  measure: 'Measure',
  /** @param at null where nobody noted when */
  measured: (at: string | null, nowMs: number, stale: 'library' | 'app' | null) =>
    `${at === null ? '' : `Measured ${ageText(at, nowMs)}.`}${stale === null ? '' : ` ${STALE[stale]}`}`,
  rateUnderstood: 'understood',
  rateRejected: 'rejected',
  understoodTitle: 'Held-out takes understood',
  takesNote: (accuracy: Rate) => `${countOf(accuracy)} takes`,
  measuredHow: (evaluation: Evaluation) =>
    `${measuredSentence(evaluation)} 95 % interval ${percentRange(evaluation.accuracy.low, evaluation.accuracy.high)}.`,
  confusionTitle: 'What was taken for what',
  lookAtTakes: 'Look at these takes',
  howMeasured: 'How it was measured',
  foldsLead:
    'In each fold scaling, templates and thresholds are learned again without the takes held out.',
  heldOut: 'Held out',
  tested: 'tested',
  trainedOn: 'trained on',
  with: 'with',
  templates: 'templates',
  kernels: 'kernels',
  both: 'both',
  leftOut: (takes: number) => `${plural('take', takes)} left out`,
  leftOutBecause: (takes: number, reason: string) => `${plural('take', takes)}: ${reason}`,
  recall: 'recall',
  precision: 'precision',
  scoresTitle: 'Gesture by gesture',
  scoresLead:
    'Recall: of the takes performed, how many were answered so. Precision: of the answers, how many were right. Lines are 95 % Wilson intervals.',
  tradeOffAcross: 'false activations an hour →',
  tradeOffUp: '↑ missed or wrong',
  tradeOffTitle: 'Misses against false activations',
  tradeOffLead:
    'A greater threshold factor accepts more: fewer takes are missed, and more movements answer that nobody meant. Same held-out takes and background at every point; axes are stretched near 0.',
  thresholdFactor: 'Threshold factor',
  rejectsMore: '× 0.5 rejects more',
  acceptsMore: 'accepts more × 2',
  factorHint: (stale: boolean) =>
    `${stale ? 'Takes, settings or the app have changed since this was measured. ' : ''}The factor is the one under Training on Prop; the next model takes it. A point that is chosen for its figures looks better than it is: measure it again with takes and background recorded afterwards.`,
  missedOrWrong: 'Missed or wrong',
  notKnown: 'not known',
  notCounted: 'no background was counted: record some on Moves',
  claimLabel: 'A rate to claim, fewer an hour than',
}

function hourlyRange(low: number, high: number): string {
  return `${shortNumber(low)} to ${shortNumber(high)} an hour`
}
