import { plural } from './numbers'

/** What the report says of evaluation, false activations and grip. */
export const REPORT_MEASURED = {
  falseActivations: 'False activations',
  noBackground: 'Not known: no background was measured.',
  backgroundCaption:
    'In recordings that hold no gesture, never trained on in the round that counts them. The interval is exact Poisson (Garwood 1936).',
  backgroundHeads: ['', 'activations', 'hours', 'an hour', '95 % interval, an hour'],
  backgroundRow: 'false activations',
  range: (low: string, high: string) => `${low} to ${high}`,
  cutOut: (movements: number) => `${plural('movement', movements)} were cut out of the background.`,
  aboutCurve:
    'A greater threshold factor accepts more. The dot is the factor set, with both intervals; a point that is chosen for its figures looks better than it is.',
  noData: 'no data',
  allTakes: 'All held-out takes',
  scoresCaption:
    'Gesture by gesture. Recall: of the takes performed, how many were answered so. Precision: of the answers, how many were right.',
  cutCaption:
    'How takes were cut out of the stream. Of a split one the longest piece decides; missed, too long and too short ones are answered with none.',
  rounds: 'Rounds',
  evaluation: 'Evaluation',
  notMeasured: 'Not measured.',
  measuredAt: (instant: string) => `Measured ${instant}.`,
  stale:
    'Takes, settings or the version of the app have changed since: these figures are of the state before.',
  aboutRounds:
    'In each round scaling, templates and thresholds were learned again without the takes held out; takes ran through the whole stream, cutting included. Intervals of shares are 95 % by Wilson’s formula.',
  /** @param what the rows are; '' where they say so themselves */
  rateHeads: (what: string) => [what, 'share', 'n', '95 % interval'],
  understood: 'understood',
  rejected: 'rejected',
  noMistakes: 'No take was answered with another gesture or none.',
  notUnderstood: 'Not understood:',
  none: 'none',
  scoreHeads: ['Gesture', 'recall', 'n', '95 % interval', 'precision', 'n', '95 % interval'],
  cut: 'Cut',
  roundHeads: ['Held out', 'takes tested', 'takes trained on', 'compared by'],
  leftOut: 'Left out:',
  takesLeftOut: (takes: number, reason: string) => `${plural('take', takes)}, ${reason}`,
  grip: 'Grip tolerance',
}
