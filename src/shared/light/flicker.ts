/**
 * Percent modulation of light at a frequency that IEEE Std 1789-2015, 8.1.1 recommends not to
 * exceed. It speaks of lighting, not of props: guidance. Infinity where it sets no limit.
 */
export function modulationLimits(hz: number): { lowRisk: number; noEffect: number } {
  const none = Number.POSITIVE_INFINITY
  return {
    lowRisk: hz < 90 ? 0.025 * hz : hz <= 1250 ? 0.08 * hz : none,
    noEffect: hz < 90 ? 0.01 * hz : hz <= 3000 ? 0.0333 * hz : none,
  }
}

/** Smallest PWM frequencies at which full modulation is low risk and without observable effect. */
export const LOW_RISK_HZ = 1250
export const NO_EFFECT_HZ = 3003

/** Percent modulation 100 (max - min) / (max + min) of PWM: all or nothing at every duty below 1. */
export function pwmModulation(duty: number): number {
  return duty > 0 && duty < 1 ? 100 : 0
}

/** Flicker index of PWM: the part of the light above its mean, 1 - duty. */
export function pwmFlickerIndex(duty: number): number {
  return duty > 0 && duty < 1 ? 1 - duty : 0
}

/** What a moving prop draws in the air: lit dashes and the gaps between, mm. */
export interface Dashes {
  spacingMm: number
  litMm: number
}

/** Speed over frequency; the lit part is the duty's share of it. */
export function dashes(speedMps: number, pwmHz: number, duty: number): Dashes {
  const spacingMm = (speedMps / pwmHz) * 1000
  return { spacingMm, litMm: spacingMm * Math.min(1, Math.max(0, duty)) }
}
