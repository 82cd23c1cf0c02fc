import { progressOf, type SessionProgress } from '../../shared/collect/session-progress'
import type { SessionRun } from '../../shared/collect/session-run'
import type { Library } from '../../shared/model/library'

/** Ended sessions stay in reach for a day, so that they can be handed over. */
const IN_REACH_MS = 24 * 3_600_000

/** A session on this phone that waits to go on, or to be handed over. */
export interface WaitingSession extends SessionProgress {
  id: string
  testerCode: string
  isOver: boolean
}

/** Those of one library, newest first as the runs. @param nowMs ms since the epoch */
export function waitingSessions(
  runs: readonly SessionRun[],
  library: Library,
  nowMs: number,
): WaitingSession[] {
  return runs
    .filter((run) => run.plan.libraryId === library.id && waits(run, library, nowMs))
    .map((run) => ({
      id: run.id,
      testerCode: run.testerCode,
      isOver: run.endedAt !== null,
      ...progressOf(run),
    }))
}

/** In the designer's own library, which has the plans, what is over is home already. */
function waits(run: SessionRun, library: Library, nowMs: number): boolean {
  if (run.endedAt === null) return true
  const isHome = (library.plans ?? []).some(({ id }) => id === run.plan.id)
  return !isHome && nowMs - Date.parse(run.endedAt) < IN_REACH_MS
}
