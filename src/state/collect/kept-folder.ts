const KEY = 'movewright.folder'

/** What is kept of a shared folder between visits: never its password. */
export interface KeptFolder {
  /** Empty while it is off. */
  address: string
  user: string
}

export function readKept(): KeptFolder {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null')
    const { address, user } = (stored ?? {}) as { address?: unknown; user?: unknown }
    if (typeof address === 'string' && typeof user === 'string') return { address, user }
  } catch {
    // Storage forbidden, or not ours: the folder is off.
  }
  return { address: '', user: '' }
}

export function writeKept(kept: KeptFolder | null): void {
  try {
    if (kept === null) localStorage.removeItem(KEY)
    else localStorage.setItem(KEY, JSON.stringify(kept))
  } catch {
    // Storage forbidden or full: the choice holds for this visit.
  }
}
