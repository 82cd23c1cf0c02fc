import type { ComponentChildren } from 'preact'
import { Moves } from '../moves'
import { Proof } from '../proof'
import { Prop } from '../prop'
import { Try } from '../try'

/** What the first part of the address shows; each place reads the rest itself. */
export const PLACES: Record<string, (rest: string[]) => ComponentChildren> = {
  moves: () => <Moves />,
  try: (rest) => <Try rest={rest} />,
  proof: (rest) => <Proof rest={rest} />,
  prop: (rest) => <Prop rest={rest} />,
}
