import type { Core } from '../../core/core'
import { roomForTables } from '../budget'
import type { Example } from '../examples'
import type { Matcher } from '../matcher-search'
import { warpOf } from '../matcher-search'
import type { Prepared } from '../prepare'
import { fitMatcher, type MatcherFit, type MatcherWish } from './fit-matcher'

/** A library always gives the same features. */
const SEED = 1

/** A fit in the library's numbering of gestures. */
export interface LibraryFit extends MatcherFit {
  /** Examples whose `gesture` is the index in the model. */
  classed: Example[]
  /** Templates of each gesture of the library, as indices of examples. */
  chosenOf: number[][]
}

/**
 * fitMatcher for a library: gestures without an example are left out of the model.
 * @param table distances between the examples
 */
export function fitLibrary(
  core: Core,
  { gestures, settings, target }: Prepared,
  matcher: Matcher,
  examples: readonly Example[],
  table: Float64Array,
  wish: MatcherWish,
): LibraryFit | null {
  const present = [...gestures.keys()].filter((g) => examples.some((e) => e.gesture === g))
  const classed = examples.map((e) => ({ ...e, gesture: present.indexOf(e.gesture) }))
  const fit = fitMatcher(core, {
    examples: classed,
    classCount: present.length,
    length: matcher.normaliser.length,
    channels: warpOf(matcher).channels,
    table,
    budgetBytes: roomForTables(target, present.length),
    templatesPerGesture: settings.templatesPerGesture,
    seed: SEED,
    wish,
  })
  if (fit === null) return null
  const chosenOf = gestures.map((_, g) => fit.chosen[present.indexOf(g)] ?? [])
  return { ...fit, classed, chosenOf }
}
