/** Mains and its usual harmonics: transformers hum at twice the frequency. */
const MAINS_HZ = [50, 60, 100, 120, 150, 180]
/** Mains stays within 1 % of its frequency, and so does a sensor's rate within what is measured. */
const TOLERANCE = 0.01
const LEAST_HZ = 0.3

/** Frequency at which f shows when it is sampled: folded into 0..rate/2. */
export function foldedHz(frequencyHz: number, rateHz: number): number {
  const within = frequencyHz % rateHz
  return Math.min(within, rateHz - within)
}

/** The mains frequency that a line at `hz` may be, null when none is near. */
export function mainsOf(hz: number, rateHz: number): number | null {
  const near = (mains: number) =>
    Math.abs(foldedHz(mains, rateHz) - hz) < Math.max(LEAST_HZ, TOLERANCE * mains)
  return MAINS_HZ.find(near) ?? null
}
