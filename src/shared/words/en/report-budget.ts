import { plural } from './numbers'

/** What the report says of the model and what it asks of the target. */
export const REPORT_BUDGET = {
  title: 'Model and budget',
  comparedBy: 'Compared by',
  takesUsed: 'Takes used',
  takes: (count: number) => plural('take', count),
  takesUncut: 'Takes without a single movement',
  caption:
    'Counted: exact, from the model. Measured: on an emulated core of this kind, with the demo library. Estimated: computed from these with cycles or currents that were not measured.',
  noModel: (why: string) => `No model: ${why}`,
  heads: ['', 'value', 'known', 'of the target', 'what it rests on'],
}
