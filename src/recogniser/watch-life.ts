import { lockOf } from '../shared/protocol/sign-of-life'

/** A worker that has sent nothing by then was ended before it began, or its script never came. */
export const BEGIN_WITHIN_MS = 30_000

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
      if (lock === null) return
      navigator.locks
        ?.request(lock, { signal }, () => {
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
