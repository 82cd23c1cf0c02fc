import { lockOf } from '../shared/protocol/sign-of-life'

/** A worker that has sent nothing by then was ended before it began, or its script never came. */
export const BEGIN_WITHIN_MS = 30_000
/** Between looks whether the browser knows of a worker's lock yet. */
const LOOK_AGAIN_MS = 100

/**
 * Calls back when a worker ends without a word, as when the browser takes its memory away: nothing
 * else tells that, and calls to it would wait for ever.
 * @returns the way to stop watching; to be called before the worker is ended on purpose
 */
export function watchLife(
  worker: Worker,
  onGone: () => void,
  beginWithinMs = BEGIN_WITHIN_MS,
): () => void {
  const stop = new AbortController()
  const { signal } = stop
  const never = setTimeout(onGone, beginWithinMs)
  worker.addEventListener('message', () => clearTimeout(never), { signal, once: true })
  worker.addEventListener(
    'message',
    ({ data }) => {
      const lock = lockOf(data)
      if (lock === null || navigator.locks === undefined) return
      outlive(lock, signal, beginWithinMs)
        .then(() => {
          if (!signal.aborted) onGone()
        })
        .catch(() => undefined)
    },
    { signal },
  )
  return () => {
    clearTimeout(never)
    stop.abort()
  }
}

/**
 * Resolves once the worker with this lock has ended. Its name may come here before the browser has
 * heard of the worker's own wish: whoever asked at once would be given the lock first.
 */
async function outlive(lock: string, signal: AbortSignal, withinMs: number): Promise<void> {
  const until = performance.now() + withinMs
  while (!(await isTaken(lock))) {
    if (signal.aborted || performance.now() > until) return
    await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS))
  }
  await navigator.locks.request(lock, { signal }, () => undefined)
}

async function isTaken(lock: string): Promise<boolean> {
  const { held = [], pending = [] } = await navigator.locks.query()
  return [...held, ...pending].some(({ name }) => name === lock)
}
