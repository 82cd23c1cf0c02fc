import type { Target } from '../shared/model/target'
import type { LibraryState } from './app'
import { createDemo, type GenerateDemo } from './demo'
import { createGestures } from './gestures'
import { createLibraries } from './libraries'
import { createRecordings } from './recordings'
import type { Shelf } from './shelf'

export interface LibraryParts {
  defaultTarget: () => Target
  generateDemoLibrary: GenerateDemo
}

/** Everything that can be done to libraries, and the way to add a whole one. */
export function createLibraryState(shelf: Shelf, parts: LibraryParts) {
  const { add, ...libraries } = createLibraries(shelf, parts.defaultTarget)
  const state: LibraryState = {
    libraries: shelf.libraries,
    current: shelf.current,
    recordings: shelf.recordings,
    storageFacts: shelf.facts,
    ...libraries,
    ...createDemo(parts.generateDemoLibrary, add),
    ...createGestures(shelf),
    ...createRecordings(shelf),
  }
  return { state, add }
}
