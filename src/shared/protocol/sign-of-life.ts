/**
 * A worker's sign of life: the name of a Web Lock that it holds as long as it lives. A browser that
 * takes a worker's memory away sends no message; the lock falls to whoever waits for it.
 */
export interface SignOfLife {
  aliveLock: string
}

/** The lock's name in a message, or null when the message is something else. */
export function lockOf(message: unknown): string | null {
  const name = (message as Partial<SignOfLife> | null | undefined)?.aliveLock
  return typeof name === 'string' ? name : null
}
