import { type ReadonlySignal, signal } from '@preact/signals'
import type { FullLibrary } from '../shared/model/library'
import type { Result } from '../shared/model/result'
import type { OnProgress, Progress } from '../shared/protocol/recogniser'
import { PROGRESS } from '../shared/words/en/progress'
import type { Job } from './app'

/** The same demo for everybody, so that figures in the documents can be checked. */
const DEMO_SEED = 1

export type GenerateDemo = (
  seed: number,
  onProgress: OnProgress,
  pause: () => Promise<void>,
) => Promise<FullLibrary>

export interface Demo {
  demoJob: ReadonlySignal<Job<null>>
  addDemo(): Promise<void>
}

/** Generates the demo library in slices, so that the screen stays alive, and adds it. */
export function createDemo(
  generate: GenerateDemo,
  add: (full: FullLibrary) => Promise<Result<unknown>>,
): Demo {
  const demoJob = signal<Job<null>>({ state: 'none' })
  const addDemo = async () => {
    if (demoJob.peek().state === 'running') return
    const abort = new AbortController()
    const cancel = () => abort.abort()
    const show = (progress: Progress) => {
      demoJob.value = { state: 'running', progress, cancel }
    }
    const pause = async () => {
      await nextTask()
      abort.signal.throwIfAborted()
    }
    show({ done: 0, total: 1, what: PROGRESS.generatingDemo })
    try {
      const added = await add(await generate(DEMO_SEED, show, pause))
      demoJob.value = added.ok ? { state: 'none' } : { state: 'failed', message: added.message }
    } catch (error) {
      demoJob.value = { state: 'none' }
      if (!abort.signal.aborted) throw error
    }
  }
  return { demoJob, addDemo }
}

function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0)
  })
}
