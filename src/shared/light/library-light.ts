import type { Gesture, Library } from '../model/library'
import { type Answer, type LightSettings, OWN_ANSWERS } from '../model/light'
import { LIGHT_PRESETS } from '../words/en/light-presets'
import { defaultAnswer, defaultLight } from './defaults'
import { FIRST_GESTURE, type LightTable, REJECT, REST } from './table'

/** Fixed, so that flicker and sparkle are the same on every board and in every preview. */
const SEED = 0x6d6f7665

export type LightOwner = Pick<Library, 'gestures'> & { light?: LightSettings | undefined }

/** Light settings of a library; the defaults for one that has none. */
export function lightOf(library: LightOwner): LightSettings {
  return library.light ?? defaultLight()
}

/** Answer of a gesture; the default for one that has none. */
export function answerOf(gestures: readonly Gesture[], id: string): Answer {
  const index = gestures.findIndex((gesture) => gesture.id === id)
  return gestures[index]?.answer ?? defaultAnswer(Math.max(0, index), gestures.length)
}

/** Answers in the order of the effects in a table, with their keys: own ones, then gestures. */
export function answersInOrder(
  library: LightOwner,
): { key: string; name: string; answer: Answer }[] {
  const { answers } = lightOf(library)
  return [
    ...OWN_ANSWERS.map((key) => ({ key, name: LIGHT_PRESETS.own[key], answer: answers[key] })),
    ...library.gestures.map(({ id, name }) => ({
      key: id,
      name,
      answer: answerOf(library.gestures, id),
    })),
  ]
}

/** Number in the table of the effect with this key; rest when there is none, as after a deletion. */
export function effectNumber(library: LightOwner, key: string | null): number {
  if (key === 'reject') return REJECT
  const index = library.gestures.findIndex((gesture) => gesture.id === key)
  return index < 0 ? REST : FIRST_GESTURE + index
}

/** The table that the preview plays and the board is given. */
export function lightTable(library: LightOwner): LightTable {
  const { led, minChangeMs } = lightOf(library)
  const [red, green, blue] = led.emitters
  const wholeMa = (ma: number) => Math.min(255, Math.max(1, Math.round(ma)))
  return {
    effects: answersInOrder(library).map(({ answer }) => ({
      effect: answer.light,
      next: effectNumber(library, answer.light.next),
    })),
    seed: SEED,
    limitMa: Math.round(led.limitMa),
    minChangeMs,
    fullMa: [wholeMa(red.currentMa), wholeMa(green.currentMa), wholeMa(blue.currentMa)],
  }
}
