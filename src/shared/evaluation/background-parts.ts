import type { Holdout } from '../model/evaluation'
import { AXES } from '../model/sample'
import type { Prepared, PreparedBackground } from '../training/prepare'
import type { Group } from './groups'

export interface BackgroundParts {
  train: PreparedBackground[]
  test: PreparedBackground[]
}

/**
 * Background for each round, so that all of it is counted once, by a model that has not seen it.
 * Where testers are held out, a tester's background is counted whole in their own round and is no
 * part of its training. All other background is cut into as many stretches as there are rounds.
 */
export function splitBackground(
  prepared: Prepared,
  holdout: Holdout,
  groups: readonly Group[],
): BackgroundParts[] {
  const parts = groups.map((): BackgroundParts => ({ train: [], test: [] }))
  for (const background of prepared.backgrounds) {
    const code = background.background.testerCode
    const own = holdout === 'tester' ? groups.findIndex((group) => group.label === code) : -1
    const stretches =
      own < 0
        ? stretchesOf(background, groups.length)
        : groups.map((_, index) => (index === own ? background : null))
    for (const [counted, stretch] of stretches.entries()) {
      if (stretch === null) continue
      for (const [index, part] of parts.entries()) {
        if (index === counted) part.test.push(stretch)
        else part.train.push(stretch)
      }
    }
  }
  return parts
}

function stretchesOf(background: PreparedBackground, count: number): PreparedBackground[] {
  const samples = background.counts.length / AXES
  const edge = (index: number) => Math.floor((samples * index) / count) * AXES
  return Array.from({ length: count }, (_, index) => ({
    ...background,
    counts: background.counts.subarray(edge(index), edge(index + 1)),
  }))
}
