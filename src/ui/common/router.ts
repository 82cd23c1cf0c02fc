import { signal } from '@preact/signals'

/** Parts of the hash route, decoded: '#/gesture/abc' is ['gesture', 'abc']. */
export type Path = string[]

export const HOME = '#/moves'

export function parseHash(hash: string): Path {
  const parts = hash
    .replace(/^#\/?/, '')
    .split('/')
    .filter((part) => part !== '')
  return parts.length === 0 ? ['moves'] : parts.map(decodePart)
}

/** A hash route from its parts, encoded. */
export function route(...parts: string[]): string {
  return `#/${parts.map(encodeURIComponent).join('/')}`
}

export const path = signal<Path>(parseHash(globalThis.location?.hash ?? ''))

/** Steps made inside the app, so that back never leaves it by surprise. */
let depth = 0

interface Hold {
  hash: string
  onAway: () => void
  /** Whether the entry before the one it stands on is the screen's own. */
  ownBelow: boolean
}

/** Set while a screen is not left by the history, as by a swipe. */
let hold: Hold | null = null

/**
 * Stays at this address whatever the history is told: a swipe back or the back button lands on it
 * again. Call it from a tap: browsers skip entries that were added without one.
 * @param onAway called after each try to leave
 * @returns the way to let go; the screen stays, and back leads to where it was opened from
 */
export function holdHere(onAway: () => void): () => void {
  const held = { hash: location.hash, onAway, ownBelow: true }
  hold = held
  stand(held)
  return () => {
    if (hold !== held) return
    hold = null
    if (held.ownBelow) history.back()
  }
}

/** An entry of its own for the history to take away. */
function stand({ hash }: Hold): void {
  history.pushState({ depth: depth + 1 }, '', hash)
}

export function navigate(hash: string): void {
  globalThis.location.hash = hash
}

/**
 * The way on from work that takes a while: taken when it begins, it leads only whoever is still there
 * when it ends.
 */
export function wayFromHere(): (hash: string) => void {
  const { hash } = location
  return (to) => {
    if (location.hash === hash) navigate(to)
  }
}

/** Goes there without leaving this screen in the history. */
export function replace(hash: string): void {
  history.replaceState(history.state, '', hash)
  path.value = parseHash(hash)
}

/** Back in the history when it was made here, else to the given route. */
export function goBack(fallback: string): void {
  if (depth > 0) history.back()
  else replace(fallback)
}

/** Follows the address. Returns the way to stop. */
export function startRouter(): () => void {
  const onChange = () => {
    if (hold !== null) return
    const known: unknown = history.state?.depth
    if (typeof known === 'number') {
      depth = known
    } else {
      depth += 1
      history.replaceState({ depth }, '')
    }
    path.value = parseHash(location.hash)
  }
  if (history.state?.depth === undefined) history.replaceState({ depth: 0 }, '')
  else depth = history.state.depth
  const onPop = () => {
    if (hold === null) return
    hold.ownBelow = location.hash === hold.hash
    stand(hold)
    hold.onAway()
  }
  addEventListener('hashchange', onChange)
  addEventListener('popstate', onPop)
  path.value = parseHash(location.hash)
  return () => {
    removeEventListener('hashchange', onChange)
    removeEventListener('popstate', onPop)
  }
}

function decodePart(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}
