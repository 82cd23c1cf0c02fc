/** What a show can be without: readings of the sensor, or the recogniser's worker. */
export type Gone = 'sensor' | 'recogniser'

/** How the show stands. Times are ms on one clock that never goes back. */
export type Show =
  /** `why`: a sentence when the start was refused. */
  | { phase: 'off'; why: string | null }
  | { phase: 'starting' }
  /** `outageMs`: how long it was gone, for a moment after it came back. */
  | { phase: 'on'; outageMs: number | null; sinceMs: number }
  /** Goes on by itself. `tryAtMs`: null while a try is under way. */
  | { phase: 'mending'; gone: Gone; sinceMs: number; tries: number; tryAtMs: number | null }

export type ShowEvent =
  | { kind: 'begin' }
  | { kind: 'leave' }
  /** A start that was asked for went well, or did not. */
  | { kind: 'started'; atMs: number }
  | { kind: 'refused'; sentence: string; atMs: number }
  | { kind: 'lost'; gone: Gone; atMs: number }
  /** The sensor sends again. */
  | { kind: 'readings'; atMs: number }
  | { kind: 'tick'; atMs: number }

export const OFF: Show = { phase: 'off', why: null }

/** Waits before the tries of a restart, ms; the last one holds for all that follow. */
const WAITS_MS = [200, 1000, 2000, 4000, 5000] as const
const LONGEST_WAIT_MS = 5000
/** How long it is said that the show is back. */
const BACK_SHOWN_MS = 4000

/** The show after something happened; the very same object when nothing changed. */
export function advanceShow(show: Show, event: ShowEvent): Show {
  switch (event.kind) {
    case 'begin':
      return show.phase === 'off' ? { phase: 'starting' } : show
    case 'leave':
      return show.phase === 'off' && show.why === null ? show : OFF
    case 'started':
      return started(show, event.atMs)
    case 'refused':
      return refused(show, event.sentence, event.atMs)
    case 'lost':
      return lost(show, event.gone, event.atMs)
    case 'readings':
      return show.phase === 'mending' && show.tryAtMs !== null
        ? { ...show, tryAtMs: event.atMs }
        : show
    case 'tick':
      return ticked(show, event.atMs)
  }
}

/** Whether a start of the live recognition is asked for by this step from one state to the next. */
export function asksForStart(before: Show, after: Show): boolean {
  return isTrying(after) && !isTrying(before)
}

function isTrying(show: Show): boolean {
  return show.phase === 'starting' || (show.phase === 'mending' && show.tryAtMs === null)
}

function started(show: Show, atMs: number): Show {
  if (show.phase === 'starting') return { phase: 'on', outageMs: null, sinceMs: atMs }
  if (show.phase !== 'mending') return show
  return { phase: 'on', outageMs: atMs - show.sinceMs, sinceMs: atMs }
}

/** The first start may be refused for good, as without permission; later ones are tried again. */
function refused(show: Show, sentence: string, atMs: number): Show {
  if (show.phase === 'starting') return { phase: 'off', why: sentence }
  if (show.phase !== 'mending') return show
  const tries = show.tries + 1
  return { ...show, tries, tryAtMs: atMs + (WAITS_MS[tries] ?? LONGEST_WAIT_MS) }
}

function lost(show: Show, gone: Gone, atMs: number): Show {
  if (show.phase !== 'on') return show
  return { phase: 'mending', gone, sinceMs: atMs, tries: 0, tryAtMs: atMs + WAITS_MS[0] }
}

function ticked(show: Show, atMs: number): Show {
  if (show.phase === 'mending' && show.tryAtMs !== null && atMs >= show.tryAtMs) {
    return { ...show, tryAtMs: null }
  }
  const told = show.phase === 'on' && show.outageMs !== null
  if (told && atMs - show.sinceMs >= BACK_SHOWN_MS) return { ...show, outageMs: null }
  return show
}
