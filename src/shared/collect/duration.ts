import type { Plan } from './plan'
import { promptsOf } from './prompts'

/** From a prompt to the next, besides the movement itself: read, get ready, answer; ms. Estimated. */
const AROUND_A_TAKE_MS = 6_500
/** A movement whose length nobody knows yet, ms. */
const MOVEMENT_MS = 2_000
/** Consent, hand and sensor before the first prompt, and handing over after the last, ms. */
const AROUND_A_SESSION_MS = 60_000

/**
 * How long one tester will take, ms: an estimate and not a measurement.
 * @param movementMs typical length of a take by gesture id, where known
 */
export function estimateDurationMs(plan: Plan, movementMs: ReadonlyMap<string, number>): number {
  return promptsOf(plan, 0).reduce((sum, prompt) => {
    if (prompt.kind !== 'take') return sum + prompt.durationMs
    return sum + AROUND_A_TAKE_MS + (movementMs.get(prompt.gestureId) ?? MOVEMENT_MS)
  }, AROUND_A_SESSION_MS)
}
