import { availableParallelism } from 'node:os'
import { type Failure, fail, type Result } from '../shared/model/result'
import { dispatch, type Hand } from '../shared/parts/dispatch'
import type { PartJobName, RunParts } from '../shared/parts/part-jobs'
import type { OnProgress, Progress } from '../shared/protocol/recogniser'
import type { Told } from './pool-worker'
import { startThread } from './start-thread'
import { buildCore } from './wasm'

type Said = { progress: Progress } | { answer: Result<unknown> }

class Thread {
  private readonly worker = startThread(new URL('./pool-worker.ts', import.meta.url))
  private stopped: Failure | null = null

  constructor() {
    const stop = (why: unknown) => {
      this.stopped ??= fail('thread/stopped', `A thread stopped before its answer: ${why}`)
    }
    this.worker.on('error', stop).on('exit', stop)
  }

  ask(told: Told, onProgress: OnProgress = () => {}): Promise<Result<unknown>> {
    if (this.stopped !== null) return Promise.resolve(this.stopped)
    return new Promise((resolve) => {
      const end = (answer: Result<unknown>) => {
        this.worker.off('message', hear).off('error', stopped).off('exit', stopped)
        resolve(answer)
      }
      const hear = (said: Said) => {
        if ('answer' in said) end(said.answer)
        else onProgress(said.progress)
      }
      // Heard after the constructor's listener, which says why.
      const stopped = () => end(this.stopped ?? fail('thread/stopped', 'A thread stopped.'))
      this.worker.on('message', hear).on('error', stopped).on('exit', stopped)
      this.worker.postMessage(told)
    })
  }

  end(): void {
    void this.worker.terminate()
  }
}

/** Threads of Node for parts of jobs. */
export interface Threads {
  run: RunParts
  /** Starts all threads and has them load what these jobs need, so that they begin at once. */
  ready(names: readonly PartJobName[]): Promise<void>
  end(): void
}

/** By default as many threads as there are cores, started with the first job; end them. */
export function partsOnThreads(count = availableParallelism()): Threads {
  const threads: Thread[] = []
  const start = async (wanted: number) => {
    // Before the threads start, or each would compile the core.
    await buildCore()
    while (threads.length < Math.max(1, wanted)) threads.push(new Thread())
  }
  const run = async (
    name: PartJobName,
    shared: unknown,
    parts: readonly unknown[],
    onProgress?: OnProgress,
  ) => {
    await start(Math.min(count, parts.length))
    const hands = threads.map((thread): Hand => {
      const opened = thread.ask({ open: { name, shared } })
      return {
        run: async (part, tell) => {
          const open = await opened
          return open.ok ? thread.ask({ part: parts[part] }, tell) : open
        },
      }
    })
    return dispatch(parts.length, hands, { onProgress })
  }
  return {
    run: run as RunParts,
    ready: async (names) => {
      await start(count)
      await Promise.all(threads.map((thread) => thread.ask({ load: names })))
    },
    end: () => {
      for (const thread of threads.splice(0)) thread.end()
    },
  }
}
