import { FIGURE_SOURCES } from '../words/en/figure-sources'

/** Where a figure of a preset comes from. */
export interface Source {
  text: string
  /** Written down from memory and checked against nothing: shown as such. */
  fromMemory: boolean
}

export const MEMORY: Source = {
  text: FIGURE_SOURCES.fromMemory,
  fromMemory: true,
}

export function readIn(text: string): Source {
  return { text, fromMemory: false }
}
