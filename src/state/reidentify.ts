import type { Plan } from '../shared/collect/plan'
import type { FullLibrary, Recording } from '../shared/model/library'
import type { Answer, LightSettings } from '../shared/model/light'

type MapLabels = <R extends Recording>(recording: R, gestureId: (id: string) => string) => R

/**
 * The same library under new ids and a free name, so that one file can be brought in twice.
 * @param taken names in use
 * @param mapLabels `mapRecording` of `shared/collect`: the gesture of a take, now and in its history
 */
export function reidentify(
  full: FullLibrary,
  taken: string[],
  newId: () => string,
  mapLabels: MapLabels,
): FullLibrary {
  const libraryId = newId()
  const gestureIds = new Map(full.library.gestures.map((gesture) => [gesture.id, newId()]))
  const gestureId = (id: string) => gestureIds.get(id) ?? id
  const { light, plans } = full.library
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
      ...(plans === undefined
        ? {}
        : { plans: plans.map((plan) => moved(plan, libraryId, gestureId)) }),
      ...(light === undefined ? {} : { light: chainedAll(light, gestureId) }),
    },
    recordings: full.recordings.map(({ recording, samples }) => ({
      recording: { ...mapLabels(recording, gestureId), id: newId(), libraryId },
      samples,
    })),
  }
}

function moved(plan: Plan, libraryId: string, gestureId: (id: string) => string): Plan {
  const gestures = plan.gestures.map((one) => ({ ...one, gestureId: gestureId(one.gestureId) }))
  return { ...plan, libraryId, gestures }
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
