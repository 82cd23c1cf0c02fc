import type { CoreEvent } from '../../core/core'

/** An event with its middle on one clock, ms. */
export interface TimedEvent {
  event: CoreEvent
  atMs: number
}

export interface EventPair {
  phone: TimedEvent | null
  board: TimedEvent | null
  /** What differs; 'same' where both name the same gesture, or both reject. */
  outcome:
    | 'same'
    | 'other-gesture'
    | 'board-rejects'
    | 'phone-rejects'
    | 'only-phone'
    | 'only-board'
}

export interface EventComparison {
  pairs: EventPair[]
  same: number
  /** The first pair that is not the same. */
  firstDifference: EventPair | null
}

/** Middles of one movement, cut by two sensors, lie within this of each other, ms. */
const NEAR_MS = 400

/**
 * Events side by side in order of time: each of the phone's with the nearest of the board's that is not
 * taken and lies within 0.4 s. Movements too short or too long to be compared are left out on both
 * sides, as they are on the board.
 */
export function compareEvents(
  phone: readonly TimedEvent[],
  board: readonly TimedEvent[],
): EventComparison {
  const free = new Set(board.filter(counts))
  const pairs: EventPair[] = phone.filter(counts).map((own) => {
    const nearest = [...free]
      .map((other) => ({ other, distance: Math.abs(other.atMs - own.atMs) }))
      .sort((a, b) => a.distance - b.distance)[0]
    if (nearest === undefined || nearest.distance > NEAR_MS) {
      return { phone: own, board: null, outcome: 'only-phone' }
    }
    free.delete(nearest.other)
    return { phone: own, board: nearest.other, outcome: outcomeOf(own.event, nearest.other.event) }
  })
  for (const other of free) pairs.push({ phone: null, board: other, outcome: 'only-board' })
  pairs.sort((a, b) => timeOf(a) - timeOf(b))
  return {
    pairs,
    same: pairs.filter(({ outcome }) => outcome === 'same').length,
    firstDifference: pairs.find(({ outcome }) => outcome !== 'same') ?? null,
  }
}

function counts({ event }: TimedEvent): boolean {
  return event.reason !== 'short' && event.reason !== 'long'
}

function timeOf({ phone, board }: EventPair): number {
  return phone?.atMs ?? board?.atMs ?? 0
}

function outcomeOf(phone: CoreEvent, board: CoreEvent): EventPair['outcome'] {
  if (phone.kind === 'reject' && board.kind === 'reject') return 'same'
  if (phone.kind === 'reject') return 'phone-rejects'
  if (board.kind === 'reject') return 'board-rejects'
  return phone.gesture === board.gesture ? 'same' : 'other-gesture'
}
