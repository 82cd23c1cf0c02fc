/**
 * The low-pass of the resampler: Dodgson's quadratic kernel (IEEE Trans. Image Process. 6(9), 1997),
 * with s in output periods:
 *
 *   h(s) = 1 - 2 s²                for |s| <= 1/2
 *   h(s) = s² - 5/2 |s| + 3/2      for 1/2 < |s| <= 3/2
 *
 * It is 1 in total, even (so it shifts nothing in time), and 3/2 output periods short, which keeps
 * live delay below 30 ms from 52 Hz on. Gain at 0.1, 0.2, 0.3, 0.5, 0.75, 1 times the output rate:
 * 0.98, 0.93, 0.83, 0.52, 0.12, 0. A longer kernel would cut steeper and answer later.
 */
export const KERNEL_HALF_WIDTH = 1.5

/** ∫₀ˢ h for s in 0..3/2. */
function integralOfHalf(s: number): number {
  if (s <= 0.5) return s - (2 / 3) * s ** 3
  return s ** 3 / 3 - 1.25 * s * s + 1.5 * s - 1 / 16
}

/** ∫₀ˢ u h(u) du for s in 0..3/2. */
function momentOfHalf(s: number): number {
  if (s <= 0.5) return s * s * (0.5 - 0.5 * s * s)
  return s ** 4 / 4 - (5 / 6) * s ** 3 + 0.75 * s * s - 1 / 192
}

/** Odd antiderivative of h: from 0 to s, |s| <= 3/2. */
export function kernelIntegral(s: number): number {
  return s < 0 ? -integralOfHalf(-s) : integralOfHalf(s)
}

/** Even antiderivative of s h(s): from 0 to s, |s| <= 3/2. */
export function kernelMoment(s: number): number {
  return momentOfHalf(Math.abs(s))
}
