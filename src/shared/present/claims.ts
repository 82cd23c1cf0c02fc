/** Rates of false activations that somebody may want to claim, an hour. */
export const CLAIMS = [3, 1, 0.3] as const
