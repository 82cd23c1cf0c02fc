import type { FullLibrary } from '../shared/model/library'

/**
 * The same library under new ids and a free name, so that one file can be brought in twice.
 * @param taken names in use
 */
export function reidentify(full: FullLibrary, taken: string[], newId: () => string): FullLibrary {
  const libraryId = newId()
  const gestureIds = new Map(full.library.gestures.map((gesture) => [gesture.id, newId()]))
  const gestureId = (id: string) => gestureIds.get(id) ?? id
  return {
    library: {
      ...full.library,
      id: libraryId,
      name: freeName(full.library.name, taken),
      gestures: full.library.gestures.map((gesture) => ({
        ...gesture,
        id: gestureId(gesture.id),
      })),
    },
    recordings: full.recordings.map(({ recording, samples }) => ({
      recording:
        recording.kind === 'take'
          ? { ...recording, id: newId(), libraryId, gestureId: gestureId(recording.gestureId) }
          : { ...recording, id: newId(), libraryId },
      samples,
    })),
  }
}

/** The name itself, or the first of 'name 2', 'name 3', ... that nobody has. */
export function freeName(name: string, taken: string[]): string {
  const used = new Set(taken.map((one) => one.toLowerCase()))
  let candidate = name
  for (let count = 2; used.has(candidate.toLowerCase()); count++) candidate = `${name} ${count}`
  return candidate
}
