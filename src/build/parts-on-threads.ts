import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import { fail, type Result } from '../shared/model/result'
import { dispatch, type Hand } from '../shared/parts/dispatch'
import type { PartJobName, RunParts } from '../shared/parts/part-jobs'
import type { OnProgress, Progress } from '../shared/protocol/recogniser'
import type { ThreadJob } from './pool-worker'
import { buildCore } from './wasm'

type Said = { progress: Progress } | { answer: Result<unknown> }

/** One thread with the job open in it. */
class Thread implements Hand {
  private readonly worker: Worker

  constructor(
    job: ThreadJob,
    private readonly parts: readonly unknown[],
  ) {
    this.worker = new Worker(new URL('./pool-worker.ts', import.meta.url), {
      workerData: job,
      execArgv: ['--import', 'tsx'],
    })
  }

  run(part: number, onProgress: OnProgress): Promise<Result<unknown>> {
    return new Promise((resolve) => {
      const end = (answer: Result<unknown>) => {
        this.worker.off('message', hear).off('error', stopped).off('exit', stopped)
        resolve(answer)
      }
      const hear = (said: Said) => {
        if ('answer' in said) end(said.answer)
        else onProgress(said.progress)
      }
      const stopped = (error: unknown) =>
        end(fail('thread/stopped', `A thread stopped before its answer: ${error}`))
      this.worker.on('message', hear).on('error', stopped).on('exit', stopped)
      this.worker.postMessage(this.parts[part])
    })
  }

  end(): void {
    void this.worker.terminate()
  }
}

/** Runs parts on threads of Node, by default as many as there are cores. */
export function partsOnThreads(count = availableParallelism()): RunParts {
  const run = async (
    name: PartJobName,
    shared: unknown,
    parts: readonly unknown[],
    onProgress?: OnProgress,
  ) => {
    // Before the threads start, or each would compile the core.
    await buildCore()
    const threads = Array.from(
      { length: Math.max(1, Math.min(count, parts.length)) },
      () => new Thread({ name, shared }, parts),
    )
    const values = await dispatch(parts.length, threads, { onProgress })
    for (const thread of threads) thread.end()
    return values
  }
  return run as RunParts
}
