import { signal } from '@preact/signals'
import type { FullLibrary } from '../shared/model/library'
import type { Target } from '../shared/model/target'
import type { OnProgress } from '../shared/protocol/recogniser'
import type { Job, LibraryState } from './app'
import { createGestures } from './gestures'
import { createLibraries } from './libraries'
import { createRecordings } from './recordings'
import type { Shelf } from './shelf'

/** The same demo for everybody, so that figures in the documents can be checked. */
const DEMO_SEED = 1

export interface LibraryParts {
  defaultTarget: () => Target
  generateDemoLibrary: (seed: number, onProgress?: OnProgress) => Promise<FullLibrary>
}

export function createLibraryState(shelf: Shelf, parts: LibraryParts) {
  const demoJob = signal<Job<null>>({ state: 'none' })
  const { add, ...libraries } = createLibraries(shelf, parts.defaultTarget)

  const addDemo = async () => {
    if (demoJob.peek().state === 'running') return
    let wanted = true
    const show = (progress: { done: number; total: number; what: string }) => {
      if (!wanted) return
      const cancel = () => {
        wanted = false
        demoJob.value = { state: 'none' }
      }
      demoJob.value = { state: 'running', progress, cancel }
    }
    show({ done: 0, total: 1, what: 'Generating the lantern parade' })
    const full = await parts.generateDemoLibrary(DEMO_SEED, show)
    if (!wanted) return
    const added = await add(full)
    demoJob.value = added.ok ? { state: 'none' } : { state: 'failed', message: added.message }
  }

  const state: LibraryState = {
    libraries: shelf.libraries,
    current: shelf.current,
    recordings: shelf.recordings,
    storageFacts: shelf.facts,
    demoJob,
    addDemo,
    ...libraries,
    ...createGestures(shelf),
    ...createRecordings(shelf),
  }
  return { state, add }
}
