import type { Plan } from './plan'
import type { SessionRun } from './session-run'

/** Whoever performed a part this long ago may come for the next one, ms. */
const SAME_DAY_MS = 24 * 3_600_000

/** What this phone knows of a plan that was just opened. */
export interface RunsOfPlan {
  /** A session of this very part that is not over. */
  open: SessionRun | null
  /** Of another part, by somebody who has not performed this one. */
  otherPart: SessionRun | null
}

/** @param runs newest first. @param nowMs ms since the epoch */
export function runsOfPlan(plan: Plan, runs: readonly SessionRun[], nowMs: number): RunsOfPlan {
  const own = runs.filter((run) => run.plan.id === plan.id)
  const isThis = (run: SessionRun) => run.plan.part.number === plan.part.number
  const here = new Set(own.filter(isThis).map(({ testerKey }) => testerKey))
  const recent = (run: SessionRun) => nowMs - Date.parse(run.startedAt) < SAME_DAY_MS
  return {
    open: own.find((run) => isThis(run) && run.endedAt === null) ?? null,
    otherPart: own.find((run) => !isThis(run) && !here.has(run.testerKey) && recent(run)) ?? null,
  }
}
