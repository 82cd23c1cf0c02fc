import type { FullLibrary } from '../shared/model/library'
import type { Answer, LightSettings } from '../shared/model/light'

/**
 * The same library under new ids and a free name, so that one file can be brought in twice.
 * @param taken names in use
 */
export function reidentify(full: FullLibrary, taken: string[], newId: () => string): FullLibrary {
  const libraryId = newId()
  const gestureIds = new Map(full.library.gestures.map((gesture) => [gesture.id, newId()]))
  const gestureId = (id: string) => gestureIds.get(id) ?? id
  const { light } = full.library
  return {
    library: {
      ...full.library,
      id: libraryId,
      name: freeName(full.library.name, taken),
      gestures: full.library.gestures.map(({ answer, ...gesture }) => ({
        ...gesture,
        id: gestureId(gesture.id),
        ...(answer === undefined ? {} : { answer: chained(answer, gestureId) }),
      })),
      ...(light === undefined ? {} : { light: chainedAll(light, gestureId) }),
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

/** An answer whose light is followed by the same gesture's under its new id. */
function chained(answer: Answer, gestureId: (id: string) => string): Answer {
  const { next } = answer.light
  return { ...answer, light: { ...answer.light, next: next === null ? null : gestureId(next) } }
}

function chainedAll(light: LightSettings, gestureId: (id: string) => string): LightSettings {
  const { idle, reject, low } = light.answers
  const answers = {
    idle: chained(idle, gestureId),
    reject: chained(reject, gestureId),
    low: chained(low, gestureId),
  }
  return { ...light, answers }
}

/** The name itself, or the first of 'name 2', 'name 3', ... that nobody has. */
export function freeName(name: string, taken: string[]): string {
  const used = new Set(taken.map((one) => one.toLowerCase()))
  let candidate = name
  for (let count = 2; used.has(candidate.toLowerCase()); count++) candidate = `${name} ${count}`
  return candidate
}
