/** A visitor's turn: a card asks for a movement, a countdown leads in, then the answer is told. */
export type Turn = {
  /** Id of the gesture asked for. */
  asked: string
  /** Tries at it that went wrong so far. */
  misses: number
  /** On the clock of the events, ms. */
  sinceMs: number
} & (
  | { step: 'card' | 'count' | 'now' }
  /** `answered`: id of a gesture, or null for none of these. */
  | { step: 'told'; outcome: Outcome; answered: string | null }
)

export type Outcome = 'right' | 'other' | 'none' | 'late'

export type TurnEvent =
  /** The visitor is ready. */
  | { kind: 'ready'; atMs: number }
  | { kind: 'next'; atMs: number }
  /** Id of a gesture, or null for none of these. */
  | { kind: 'answered'; gestureId: string | null; atMs: number }
  | { kind: 'tick'; atMs: number }

export const COUNT_FROM = 3
const COUNT_MS = COUNT_FROM * 1000
/** Time for the movement after the countdown. */
const NOW_MS = 8000
const TOLD_MS = 3500
/** After so many misses the next movement is asked for: nobody shall be stuck in front of others. */
const MOST_MISSES = 2

/** The first turn; null when the library has no gestures. */
export function firstTurn(gestureIds: readonly string[], atMs: number): Turn | null {
  const [asked] = gestureIds
  return asked === undefined ? null : { step: 'card', asked, misses: 0, sinceMs: atMs }
}

/** The turn after something happened; the very same object when nothing changed. */
export function advanceTurn(turn: Turn, event: TurnEvent, gestureIds: readonly string[]): Turn {
  const { asked, misses } = turn
  switch (event.kind) {
    case 'ready':
      return turn.step === 'card' ? { step: 'count', asked, misses, sinceMs: event.atMs } : turn
    case 'next':
      return cardAfter(asked, gestureIds, event.atMs)
    case 'answered':
      return answered(turn, event.gestureId, event.atMs)
    case 'tick':
      return ticked(turn, event.atMs, gestureIds)
  }
}

/** Seconds left of the countdown: 3, 2, 1; 0 when there is none. */
export function secondsLeft(turn: Turn, nowMs: number): number {
  if (turn.step !== 'count') return 0
  return Math.max(1, COUNT_FROM - Math.floor((nowMs - turn.sinceMs) / 1000))
}

/** Early is fine when it is the movement asked for; anything else may be a hand taking the phone. */
function answered(turn: Turn, gestureId: string | null, atMs: number): Turn {
  if (turn.step === 'told') return turn
  if (gestureId === turn.asked) return told(turn, 'right', gestureId, atMs)
  if (turn.step !== 'now') return turn
  return told(turn, gestureId === null ? 'none' : 'other', gestureId, atMs)
}

function told(turn: Turn, outcome: Outcome, answered: string | null, atMs: number): Turn {
  const misses = outcome === 'right' ? 0 : turn.misses + 1
  return { step: 'told', asked: turn.asked, misses, sinceMs: atMs, outcome, answered }
}

function ticked(turn: Turn, atMs: number, gestureIds: readonly string[]): Turn {
  const { asked, misses } = turn
  const forMs = atMs - turn.sinceMs
  if (turn.step === 'count' && forMs >= COUNT_MS) {
    return { step: 'now', asked, misses, sinceMs: atMs }
  }
  if (turn.step === 'now' && forMs >= NOW_MS) return told(turn, 'late', null, atMs)
  if (turn.step !== 'told' || forMs < TOLD_MS) return turn
  if (turn.outcome === 'right' || misses >= MOST_MISSES) return cardAfter(asked, gestureIds, atMs)
  return { step: 'card', asked, misses, sinceMs: atMs }
}

function cardAfter(asked: string, gestureIds: readonly string[], atMs: number): Turn {
  const next = gestureIds[(gestureIds.indexOf(asked) + 1) % Math.max(1, gestureIds.length)]
  return { step: 'card', asked: next ?? asked, misses: 0, sinceMs: atMs }
}
