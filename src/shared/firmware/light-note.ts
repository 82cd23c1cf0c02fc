import { answerOf, lightOf, lightTable } from '../light/library-light'
import type { LightPlayer } from '../light/player'
import { lightFindings } from '../light/safety'
import { lightVector } from '../light/vector'
import type { Gesture, Library } from '../model/library'
import type { ModelOrigin } from './model-source'

/** What was found of the light of a library. */
export interface LightEvidence {
  /** Over a limit, a sentence each (`lightFindings` of `shared/light`). */
  lightFindings: readonly string[]
  /** Hash of what the player gives (`lightVector` of `shared/light`). */
  lightVector: number
}

export interface LightOrigin extends ModelOrigin, LightEvidence {}

/** Plays and checks the light as it will be exported. */
export function lightEvidence(player: LightPlayer, origin: ModelOrigin): LightEvidence {
  const answering = answeringLibrary(origin)
  return {
    lightFindings: lightFindings(player, answering),
    lightVector: lightVector(player, lightTable(answering)),
  }
}

/** The library with its gestures as the model has them: those with templates, in its order. */
export function answeringLibrary({ library, trained }: ModelOrigin): Library {
  const gestures = trained.model.gestures.map(({ id, name }): Gesture => {
    const known = library.gestures.find((gesture) => gesture.id === id)
    return { note: '', ...known, id, name, answer: answerOf(library.gestures, id) }
  })
  return { ...library, gestures }
}

/** Findings that no acknowledgement covers. */
export function uncovered({ library, lightFindings }: LightOrigin): string[] {
  const covers = lightOf(library).acknowledgement?.covers ?? []
  return lightFindings.filter((finding) => !covers.includes(finding))
}

/** What the exported files say of the safety of the light. */
export function lightNote({ library, lightFindings }: LightOrigin): string {
  if (lightFindings.length === 0) {
    return 'No effect or chain was found over the limits for flashes or flicker (WCAG 2.3.1, IEEE Std\n1789-2015). That is a calculation and no claim of compliance.'
  }
  const acknowledgement = lightOf(library).acknowledgement
  return [
    'OVER A LIMIT, and exported on the word of the designer:',
    ...lightFindings.map((finding) => `- ${finding}`),
    ...(acknowledgement === null
      ? []
      : [`Acknowledged ${acknowledgement.at}: "${acknowledgement.text}"`]),
  ].join('\n')
}
