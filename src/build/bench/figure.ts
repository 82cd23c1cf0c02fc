import type { Rate } from '../../shared/model/evaluation'

/** One measured number; printed as one JSON object a line. */
export interface Figure {
  figure: string
  value: number
  unit: string
  /** Rates: how many it is a share of, and its 95 % interval. */
  n?: number
  low?: number
  high?: number
  /** How it came about, such as settings chosen on training data. */
  note?: string
}

/** Figures, and sentences on those that could not be measured. */
export interface BenchResult {
  figures: Figure[]
  skipped: string[]
}

export function rateFigure(figure: string, { value, n, low, high }: Rate, note?: string): Figure {
  return { figure, value, unit: 'share', n, low, high, ...(note === undefined ? {} : { note }) }
}
