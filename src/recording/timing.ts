/**
 * Rest kept before a movement, ms. The recogniser averages gravity over the rest to find the roll
 * of the grip, for which it takes about 0.7 s.
 */
export const LEAD_IN_MS = 1000

/** Rest kept after a movement, ms: longer than the segmenter waits before it calls it ended. */
export const TAIL_MS = 400

/** How often the journal is written, ms: the most that a crash can lose. */
export const JOURNAL_EVERY_MS = 1000

/** Samples remembered for lead-in and live trace, ms; longer than a slow worker ever lags. */
export const REMEMBERED_MS = 10_000
