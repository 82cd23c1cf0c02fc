import type { EmitterName } from '../../power/headroom'

/** The colours of a light's emitters. */
export const EMITTER_WORDS: Record<EmitterName, string> = {
  red: 'red',
  green: 'green',
  blue: 'blue',
}
