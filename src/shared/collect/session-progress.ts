import type { Prompt } from './plan'
import { promptsOf } from './prompts'
import { currentPrompt, type SessionRun } from './session-run'

/** One take, ms: reading the prompt, getting ready, moving for two seconds, being checked. Estimated. */
export const TAKE_MS = 8500

export interface SessionProgress {
  /** Takes kept or skipped, of all takes. */
  done: number
  total: number
  /** Takes kept. */
  kept: number
  /** Estimated, ms; rests and background included. */
  remainingMs: number
}

export function progressOf(run: SessionRun): SessionProgress {
  const prompts = promptsOf(run.plan, run.seed)
  const left = currentPrompt(run) === null ? [] : prompts.slice(run.outcomes.length)
  const isTake = ({ kind }: Prompt) => kind === 'take'
  return {
    total: prompts.filter(isTake).length,
    done: prompts.slice(0, run.outcomes.length).filter(isTake).length,
    kept: run.outcomes.filter((outcome, i) => outcome.kind === 'kept' && isTake(prompts[i]!))
      .length,
    remainingMs: promptsMs(left),
  }
}

/** Time that prompts take, estimated, ms. */
export function promptsMs(prompts: readonly Prompt[]): number {
  return prompts.reduce(
    (sum, prompt) => sum + (prompt.kind === 'take' ? TAKE_MS : prompt.durationMs),
    0,
  )
}
