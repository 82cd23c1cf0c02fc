import { plural, shortNumber } from './numbers'

/** What the board check found, each finding with its evidence. */
export const BOARD_FOUND = {
  title: 'What was found',
  nothing: (asked: number) =>
    `Nothing speaks against this board: ${plural('question', asked)} asked.`,
  someNotAsked: 'Those that could not be asked stand below.',
  several: (count: number) =>
    `${plural('thing', count)}, likeliest cause of the others first. Mend the first one and log again.`,
  evidence: (finding: string) => `Evidence: ${finding}`,
  causes: 'Most likely, in this order',
  next: 'Measure next',
  fine: 'fine',
  notAsked: (why: string) => `not asked: ${why}`,
  traceRange: (low: number, high: number, unit: string, durationS: number) =>
    `${shortNumber(low)} to ${shortNumber(high)} ${unit} over ${shortNumber(durationS)} s`,
  peak: (peakHz: number) => `${shortNumber(peakHz)} Hz`,
  spectrumRange: (toHz: number) =>
    `0 to ${shortNumber(toHz)} Hz, five powers of ten from top to bottom`,
}
