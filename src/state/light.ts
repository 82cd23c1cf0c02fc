import { type ReadonlySignal, signal } from '@preact/signals'
import { lightOf } from '../shared/light/library-light'
import type { LightPlayer } from '../shared/light/player'
import { type Answer, type LightSettings, OWN_ANSWERS, type OwnAnswer } from '../shared/model/light'
import { fail, ok, type Result } from '../shared/model/result'
import { LIGHT_STATE } from '../shared/words/en/light-state'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { Shelf } from './shelf'

/** Words of an acknowledgement; fewer say nothing. */
const LEAST_LETTERS = 12

export interface LightState {
  /** A fresh player of effects, the board's own C. Each use has its own. */
  player(): Promise<LightPlayer>
  /**
   * Stores how the prop answers.
   * @param key id of a gesture, or 'idle', 'reject', 'low'
   */
  setAnswer(key: string, answer: Answer): Promise<Result<null>>
  update(change: Partial<Omit<LightSettings, 'answers' | 'acknowledgement'>>): Promise<void>
  /** Keeps the designer's word that these findings are exported on purpose. */
  acknowledge(text: string, covers: string[]): Promise<Result<null>>
  withdraw(): Promise<void>
  /** The warning of flashing light was accepted in this visit. */
  warned: ReadonlySignal<boolean>
  acceptWarning(): void
}

const NO_LIBRARY = fail('light/no-library', OPEN_LIBRARY.none)
const NOT_STORED = fail('light/not-stored', LIGHT_STATE.notStored)

/** Once a visit: it is forgotten when the page is closed. */
const warned = signal(false)

function isOwn(key: string): key is OwnAnswer {
  return (OWN_ANSWERS as readonly string[]).includes(key)
}

/** Light, LED and cells of the current library. */
export function createLight(shelf: Shelf, player: () => Promise<LightPlayer>): LightState {
  const save = async (change: Partial<LightSettings>): Promise<Result<null>> => {
    const library = shelf.current.value
    if (library === null) return NO_LIBRARY
    const light = { ...lightOf(library), ...change }
    return (await shelf.save({ ...library, light })) ? ok(null) : NOT_STORED
  }
  return {
    player,
    warned,
    acceptWarning: () => {
      warned.value = true
    },
    async setAnswer(key, answer) {
      const { checkEffect } = await import('../shared/light/check-effect')
      const checked = checkEffect(answer.light)
      if (!checked.ok) return checked
      const library = shelf.current.value
      if (library === null) return NO_LIBRARY
      if (isOwn(key)) {
        return save({ answers: { ...lightOf(library).answers, [key]: answer } })
      }
      const gestures = library.gestures.map((one) => (one.id === key ? { ...one, answer } : one))
      return (await shelf.save({ ...library, gestures })) ? ok(null) : NOT_STORED
    },
    async update(change) {
      shelf.check(await save(change))
    },
    async acknowledge(text, covers) {
      const words = text.trim()
      if (words.length < LEAST_LETTERS) {
        return fail('light/acknowledgement', LIGHT_STATE.writeWhy(LEAST_LETTERS))
      }
      const at = new Date().toISOString()
      return save({ acknowledgement: { text: words, at, covers } })
    },
    async withdraw() {
      shelf.check(await save({ acknowledgement: null }))
    },
  }
}
