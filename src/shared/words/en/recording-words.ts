import type { Hand, Source } from '../../model/library'

/** The hand a recording was made with, in lists and tables. */
export const HAND_WORDS: Record<Hand, string> = {
  left: 'left',
  right: 'right',
  unknown: 'unknown',
}

/** Where a recording's samples came from, in lists and tables. */
export const SOURCE_WORDS: Record<Source, string> = {
  phone: 'phone',
  simulated: 'simulated',
  generated: 'generated',
  imported: 'imported',
  board: 'board',
}
