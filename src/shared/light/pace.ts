import type { SafetyFinding } from './safety'

/** Speed at which flashes are shown when they are over the limit: never above it on a screen. */
export function safePace(findings: readonly SafetyFinding[]): number {
  return findings
    .filter(({ rule }) => rule !== 'pwm')
    .reduce(
      (pace, { value, limit }) => (value > limit ? Math.min(pace, limit / (value + 1)) : pace),
      1,
    )
}
