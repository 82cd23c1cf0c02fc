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

export function navigate(hash: string): void {
  globalThis.location.hash = hash
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
  addEventListener('hashchange', onChange)
  path.value = parseHash(location.hash)
  return () => removeEventListener('hashchange', onChange)
}

function decodePart(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}
