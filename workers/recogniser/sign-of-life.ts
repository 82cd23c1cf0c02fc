import type { SignOfLife } from '../../src/shared/protocol/sign-of-life'

/**
 * Asks for a lock for as long as this worker lives, and tells its name at once: the browser grants it
 * while the worker is busy, and a first call may keep it busy for long.
 */
export function giveSignOfLife(): void {
  const aliveLock = `movewright worker ${Math.random().toString(36).slice(2)}`
  // Old browsers have no locks.
  navigator.locks?.request(aliveLock, () => new Promise<never>(() => {})).catch(() => undefined)
  self.postMessage({ aliveLock } satisfies SignOfLife)
}
