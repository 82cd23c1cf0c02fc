import type { Rate } from '../../model/evaluation'
import { countOf, groupDigits, percent, percentRange } from './numbers'

/** Read in and beside the charts, or spoken instead of them. */
export const CHARTS = {
  confusionCaption: 'Rows: performed. Columns: answered. Tap a count to see its takes.',
  none: 'none',
  noneOfThese: 'none of these',
  cellDescribed: (performed: string, answered: string, count: number, total: number) =>
    `${performed} answered as ${answered}: ${count} of ${total}, ${percent(count / total)}`,
  distancesDescribed: 'Distance of the movement to each gesture against its threshold',
  gesture: 'Gesture',
  distanceAndThreshold: 'Distance and threshold',
  figures: 'Figures',
  starts: (onThreshold: number) => `starts ${groupDigits(onThreshold)}`,
  startsAndEnds: (onThreshold: number, offThreshold: number) =>
    `starts ${groupDigits(onThreshold)}, ends ${groupDigits(offThreshold)}`,
  ends: (offThreshold: number) => `ends ${groupDigits(offThreshold)}`,
  rateDescribed: (name: string, rate: Rate) =>
    `${name}: ${percent(rate.value)}, ${countOf(rate)}, 95 % interval ${percentRange(rate.low, rate.high)}`,
  nearest: 'nearest',
  next: 'next',
  restAdded: 'rest added',
}
