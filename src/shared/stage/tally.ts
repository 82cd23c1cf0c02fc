/** Counts of an evening and nothing else: no times of single movements, nobody who made them. */
export interface Tally {
  /** When counting began, RFC 3339 in UTC. */
  sinceAt: string
  /** Recognised movements by gesture id. */
  hits: Readonly<Record<string, number>>
  /** Visitors' turns that were told an answer, and those that were what the card asked for. */
  asked: number
  right: number
}

export function emptyTally(sinceAt: string): Tally {
  return { sinceAt, hits: {}, asked: 0, right: 0 }
}

export function addHit(tally: Tally, gestureId: string): Tally {
  return { ...tally, hits: { ...tally.hits, [gestureId]: hitsOf(tally, gestureId) + 1 } }
}

export function addTurn(tally: Tally, right: boolean): Tally {
  return { ...tally, asked: tally.asked + 1, right: tally.right + (right ? 1 : 0) }
}

export function hitsOf({ hits }: Tally, gestureId: string): number {
  return Object.hasOwn(hits, gestureId) ? (hits[gestureId] ?? 0) : 0
}

export function totalHits({ hits }: Tally): number {
  return Object.values(hits).reduce((sum, count) => sum + count, 0)
}

/** A stored tally as far as it is sound; null for anything else. */
export function restoreTally(value: unknown): Tally | null {
  if (typeof value !== 'object' || value === null) return null
  const { sinceAt, hits, asked, right } = value as Record<string, unknown>
  if (typeof sinceAt !== 'string' || Number.isNaN(Date.parse(sinceAt))) return null
  if (typeof hits !== 'object' || hits === null) return null
  if (!isCount(asked) || !isCount(right) || right > asked) return null
  const sound = Object.entries(hits).filter((entry): entry is [string, number] => isCount(entry[1]))
  return { sinceAt, hits: Object.fromEntries(sound), asked, right }
}

function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0
}
