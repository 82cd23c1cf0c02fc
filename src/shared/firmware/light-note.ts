import { answerOf, lightOf } from '../light/library-light'
import type { Gesture, Library } from '../model/library'
import type { ModelOrigin } from './model-source'

/** What the texts on light are made of. */
export interface LightOrigin extends ModelOrigin {
  lightFindings: readonly string[]
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
