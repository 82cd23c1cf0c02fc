import { lockOf } from '../shared/protocol/sign-of-life'

/**
 * Calls back when a worker ends without a word, as when the browser takes its memory away: nothing
 * else tells that, and calls to it would wait for ever.
 * @returns the way to stop watching; to be called before the worker is ended on purpose
 */
export function watchLife(worker: Worker, onGone: () => void): () => void {
  const stop = new AbortController()
  const { signal } = stop
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
  return () => stop.abort()
}
