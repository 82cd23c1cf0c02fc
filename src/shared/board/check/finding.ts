/** Everything the board check can find, in the order of suspicion: each may cause those after it. */
export const FINDING_CODES = [
  'no-data',
  'too-short',
  'all-zero',
  'all-ones',
  'dead-rows',
  'byte-order',
  'number-format',
  'frozen',
  'repeated',
  'doubled',
  'time-backwards',
  'rate-mixed',
  'rate-off',
  'dropped',
  'accel-unit',
  'accel-scale',
  'gyro-unit',
  'gyro-scale',
  'faces-unclear',
  'axes-mirrored',
  'axes-turned',
  'axes-differ',
  'accel-offset',
  'gyro-offset',
  'hum',
  'accel-noise',
  'gyro-noise',
  'clipped',
] as const

export type FindingCode = (typeof FINDING_CODES)[number]

/** What a finding rests on, small enough to draw beside it. */
export type Evidence =
  | {
      kind: 'trace'
      /** Values of each line, evenly spaced. */
      lines: { label: string; values: number[] }[]
      /** From the first value to the last, s. */
      durationS: number
      unit: string
    }
  | { kind: 'spectrum'; toHz: number; levels: number[]; peakHz: number; unit: string }
  | {
      kind: 'bars'
      /** Found beside what was expected; [low, high] is what passes. */
      bars: { label: string; value: number; low: number; high: number }[]
      unit: string
    }
  | { kind: 'rows'; rows: string[] }

/** What a finding says. */
export interface FindingWords {
  /** What is wrong, a few words. */
  title: string
  /** What was seen, with figures. */
  seen: string
  /** Most likely first. */
  causes: string[]
  /** What to measure or change next, in order. */
  next: string[]
}

export interface Finding extends FindingWords {
  code: FindingCode
  evidence: Evidence
}

/** A question that was asked and answered well, or could not be asked. */
export interface Passed {
  what: string
  /** Why it was not checked; null when it was, and nothing was found. */
  notChecked: string | null
}

export interface CheckResult {
  /** In the order of suspicion. */
  findings: Finding[]
  passed: Passed[]
}
