import { restoreTally, type Tally } from '../../shared/stage/tally'

const KEY = 'movewright.stage-tally'
/** Libraries whose tally is kept; the one shown longest ago goes first. */
const MOST_KEPT = 8

/** The tally of a library as this phone kept it; null when there is none. */
export function readTally(libraryId: string): Tally | null {
  const found = readAll().find(([id]) => id === libraryId)
  return found?.[1] ?? null
}

/** Kept in the browser's small storage: written within a hit, so that nothing is lost by a crash. */
export function writeTally(libraryId: string, tally: Tally): void {
  const others = readAll().filter(([id]) => id !== libraryId)
  const all = [...others, [libraryId, tally] as const].slice(-MOST_KEPT)
  try {
    localStorage.setItem(KEY, JSON.stringify(all))
  } catch {
    // Storage forbidden or full: the tally holds for this visit.
  }
}

function readAll(): [string, Tally][] {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]')
    return Array.isArray(stored) ? stored.flatMap(readOne) : []
  } catch {
    return []
  }
}

function readOne(entry: unknown): [string, Tally][] {
  if (!Array.isArray(entry) || typeof entry[0] !== 'string') return []
  const tally = restoreTally(entry[1])
  return tally === null ? [] : [[entry[0], tally]]
}
