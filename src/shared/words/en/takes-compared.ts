import type { Hand } from '../../model/library'

/** How takes are grouped when testers are set side by side. */
export const TAKES_COMPARED = {
  tooFew: 'There are fewer than two takes to compare; record some first.',
  about: (rateHz: number) => `${rateHz} Hz`,
  rateNotKnown: 'rate not known',
  notNamed: 'not named',
  hands: { left: 'left', right: 'right', unknown: 'not noted' } satisfies Record<Hand, string>,
}
