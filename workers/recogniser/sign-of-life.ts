import type { SignOfLife } from '../../src/shared/protocol/sign-of-life'

/**
 * Says at once that this worker has begun; then takes a lock for as long as it lives and tells the
 * lock's name, which may wait behind a first long call. Old browsers have no locks.
 */
export function giveSignOfLife(): void {
  self.postMessage({ begun: true })
  const aliveLock = `movewright worker ${Math.random().toString(36).slice(2)}`
  navigator.locks
    ?.request(aliveLock, () => {
      self.postMessage({ aliveLock } satisfies SignOfLife)
      return new Promise<never>(() => {})
    })
    .catch(() => undefined)
}
