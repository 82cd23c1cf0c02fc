import type { Remedy } from '../../grip/grip-tolerance'
import type { Rate } from '../../model/evaluation'
import { countOf, percent } from './numbers'

/** Titles and labels of the plots of a report. */
export const REPORT_PLOTS = {
  anHour: 'an hour',
  activations: 'False activations an hour with the exact Poisson 95 % interval',
  none: 'none',
  confusion: 'Confusion matrix: rows performed, columns answered, last column none',
  rollRecall: 'Recall against roll of the grip with 95 % intervals',
  tiltRecall: 'Recall against tilt of the mounting with 95 % intervals',
  turns: { roll: 'roll of the grip', tilt: 'tilt of the mounting' },
  remedies: {
    mark: 'a mark, dotted',
    gravity: 'aligned by gravity, solid',
    copies: 'turned copies, dashed',
  } satisfies Record<Remedy, string>,
  ribbonOf: (gesture: string) => `Ribbon of ${gesture}`,
  scoresLegend: 'r: recall, filled dot; p: precision, open dot; lines are 95 % intervals',
  scores: 'Recall and precision of each gesture with 95 % intervals',
  /** @param rate null when there is no data */
  scoreLine: (of: 'recall' | 'precision', rate: Rate | null) =>
    `${of === 'recall' ? 'r' : 'p'} ${rate === null ? 'no data' : `${percent(rate.value)} ${countOf(rate)}`}`,
  upMissed: 'up: missed or wrong, share of held-out takes',
  rightActivations: 'right: false activations an hour',
  tradeOff: 'Misses against false activations, threshold factor 0.5 to 2; the dot is the one set',
}
