import type { RecogniserModel } from '../model/recogniser-model'

/** Distance to each gesture's nearest template, from the distances to all templates in order. */
export function gestureDistances(
  model: RecogniserModel,
  templateDistances: readonly number[],
): number[] {
  let first = 0
  return model.gestures.map(({ templates }) => {
    const own = templateDistances.slice(first, first + templates.length)
    first += templates.length
    return Math.min(...own)
  })
}

export function templateCount(model: RecogniserModel): number {
  return model.gestures.reduce((sum, gesture) => sum + gesture.templates.length, 0)
}
