import type { Core } from '../../core/core'
import { roomForTables } from '../budget'
import { distancesBetween, type Example } from '../examples'
import type { Matcher } from '../matcher-search'
import { warpOf } from '../matcher-search'
import type { Prepared } from '../prepare'
import { fitMatcher, type MatcherFit, type MatcherWish } from './fit-matcher'

/** The regression's cost grows with the cube of its examples. */
const MOST_EXAMPLES = 800
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
 * fitMatcher for a library: gestures without an example are left out of the model, and of many
 * examples it learns from some, the same share of every gesture and tester.
 */
export function fitLibrary(
  core: Core,
  { gestures, settings, target }: Prepared,
  matcher: Matcher,
  examples: readonly Example[],
  wish: MatcherWish,
): LibraryFit | null {
  const present = [...gestures.keys()].filter((g) => examples.some((e) => e.gesture === g))
  const used = someOf(examples)
  const classed = used.map((i) => ({
    ...examples[i]!,
    gesture: present.indexOf(examples[i]!.gesture),
  }))
  let table: Float64Array | undefined
  const fit = fitMatcher(core, {
    examples: classed,
    classCount: present.length,
    length: matcher.normaliser.length,
    channels: warpOf(matcher).channels,
    get table() {
      table ??= distancesBetween(core, classed, warpOf(matcher))
      return table
    },
    budgetBytes: roomForTables(target, present.length),
    templatesPerGesture: settings.templatesPerGesture,
    seed: SEED,
    wish,
  })
  if (fit === null) return null
  const chosenOf = gestures.map((_, g) => {
    return (fit.chosen[present.indexOf(g)] ?? []).map((i) => used[i]!)
  })
  return { ...fit, classed, chosenOf }
}

/** Indices of the examples to learn from: all of them, or evenly many within gesture and order. */
function someOf(examples: readonly Example[]): number[] {
  const all = [...examples.keys()]
  if (all.length <= MOST_EXAMPLES) return all
  const byGesture = all.sort((a, b) => examples[a]!.gesture - examples[b]!.gesture || a - b)
  const step = all.length / MOST_EXAMPLES
  return Array.from({ length: MOST_EXAMPLES }, (_, i) => byGesture[Math.floor(i * step)]!).sort(
    (a, b) => a - b,
  )
}
