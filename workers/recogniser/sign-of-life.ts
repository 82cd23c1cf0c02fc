import type { SignOfLife } from '../../src/shared/protocol/sign-of-life'

/** Takes a lock for as long as this worker lives and tells its name. Old browsers have no locks. */
export function giveSignOfLife(): void {
  const aliveLock = `movewright worker ${Math.random().toString(36).slice(2)}`
  navigator.locks
    ?.request(aliveLock, () => {
      self.postMessage({ aliveLock } satisfies SignOfLife)
      return new Promise<never>(() => {})
    })
    .catch(() => undefined)
}
