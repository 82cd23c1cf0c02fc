import { useState } from 'preact/hooks'
import type { Progress } from '../../shared/protocol/recogniser'
import type { Steering } from '../../state/app'

export interface LongWork {
  /** Null while nothing runs. */
  running: { progress: Progress; cancel: () => void } | null
  run<T>(what: string, work: (steering: Steering) => Promise<T>): Promise<T>
}

/** Work that a tap starts and that takes a while: how far it is, and the way to stop it. */
export function useLongWork(): LongWork {
  const [running, setRunning] = useState<LongWork['running']>(null)
  return {
    running,
    run: async (what, work) => {
      const abort = new AbortController()
      const cancel = () => abort.abort()
      const show = (progress: Progress) => setRunning({ progress, cancel })
      show({ done: 0, total: 1, what })
      try {
        return await work({ signal: abort.signal, onProgress: (steps) => show({ ...steps, what }) })
      } finally {
        setRunning(null)
      }
    },
  }
}
