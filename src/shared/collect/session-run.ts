import type { Hand, Recording } from '../model/library'
import type { Plan, Prompt } from './plan'
import { promptsOf } from './prompts'

/** What became of one prompt. A background that was interrupted has several recordings; the last. */
export type Outcome =
  | { kind: 'kept'; recordingId: string }
  /** Not performed: the tester could not or would not. */
  | { kind: 'skipped' }
  | { kind: 'rested' }

/**
 * A session under way, as it is stored after each step. The recordings themselves are the truth:
 * what was stored just before a kill is taken up by `reconciled`.
 */
export interface SessionRun {
  id: string
  plan: Plan
  seed: number
  testerCode: string
  testerKey: string
  hand: Hand
  /** RFC 3339 in UTC, as the others. */
  consentAt: string
  startedAt: string
  /** Null while it goes on. */
  endedAt: string | null
  /** Of the first prompts, in their order; the one after them is asked. */
  outcomes: Outcome[]
}

/** A background this much shorter than asked is whole: a timer is never exact, ms. */
const BACKGROUND_SLACK_MS = 2000

/** What is asked now; null when there is nothing left, or the session was ended. */
export function currentPrompt(run: SessionRun): Prompt | null {
  if (run.endedAt !== null) return null
  return promptsOf(run.plan, run.seed)[run.outcomes.length] ?? null
}

/** The prompt before the present one; null at the beginning. */
export function promptBefore(run: SessionRun): Prompt | null {
  return promptsOf(run.plan, run.seed)[run.outcomes.length - 1] ?? null
}

/** Hand that the present take is performed with. */
export function promptHand(run: SessionRun): Hand {
  const prompt = currentPrompt(run)
  return prompt?.kind === 'take' && prompt.hand !== null ? prompt.hand : run.hand
}

/** The present prompt is done with; without one left the session is over. */
export function advanced(run: SessionRun, outcome: Outcome, at: string): SessionRun {
  if (currentPrompt(run) === null) return run
  const outcomes = [...run.outcomes, outcome]
  const isLast = outcomes.length >= promptsOf(run.plan, run.seed).length
  return { ...run, outcomes, endedAt: isLast ? at : null }
}

/** Ended before all was asked. What was kept stays. */
export function endedEarly(run: SessionRun, at: string): SessionRun {
  return run.endedAt === null ? { ...run, endedAt: at } : run
}

/**
 * Takes the last kept take back, and asks it again; rests and skips after it are forgotten.
 * @returns null when there is nothing to take back
 */
export function undone(run: SessionRun): { run: SessionRun; recordingId: string } | null {
  const at = run.outcomes.map(({ kind }) => kind).lastIndexOf('kept')
  const outcome = run.outcomes[at]
  if (outcome?.kind !== 'kept') return null
  return {
    run: { ...run, endedAt: null, outcomes: run.outcomes.slice(0, at) },
    recordingId: outcome.recordingId,
  }
}

/**
 * The run after a kill: recordings that were stored and not yet noted are noted now, and a last take
 * that was taken back is asked again.
 * @param recordings those of the session that are stored, in any order
 */
export function reconciled(run: SessionRun, recordings: Recording[], at: string): SessionRun {
  let now = withoutGone(run, recordings)
  const noted = new Set(keptIds(now))
  const fresh = recordings
    .filter(({ id }) => !noted.has(id))
    .sort((a, b) => a.recordedAt.localeCompare(b.recordedAt))
  for (const recording of fresh) {
    // A take that followed a rest shows that the rest was over.
    const rested = currentPrompt(now)?.kind === 'rest' ? advanced(now, { kind: 'rested' }, at) : now
    if (!answers(recording, rested, recordings)) continue
    now = advanced(rested, { kind: 'kept', recordingId: recording.id }, at)
  }
  return now
}

function withoutGone(run: SessionRun, recordings: Recording[]): SessionRun {
  const stored = new Set(recordings.map(({ id }) => id))
  const last = keptIds(run).at(-1)
  return last === undefined || stored.has(last) ? run : (undone(run)?.run ?? run)
}

function keptIds(run: SessionRun): string[] {
  return run.outcomes.flatMap((outcome) => (outcome.kind === 'kept' ? outcome.recordingId : []))
}

/** Time of the present background prompt that is recorded already, ms. */
export function backgroundSoFarMs(recordings: Recording[]): number {
  return recordings
    .filter(({ kind }) => kind === 'background')
    .reduce((sum, { durationMs }) => sum + durationMs, 0)
}

function answers(recording: Recording, run: SessionRun, all: Recording[]): boolean {
  const prompt = currentPrompt(run)
  if (prompt?.kind === 'background') {
    const soFarMs = backgroundSoFarMs(all)
    return recording.kind === 'background' && soFarMs + BACKGROUND_SLACK_MS >= prompt.durationMs
  }
  return (
    prompt?.kind === 'take' && recording.kind === 'take' && recording.gestureId === prompt.gestureId
  )
}
