import type { RecogniserModel } from '../model/recogniser-model'

const MOST_NEAR = 4

/** The gestures that the movements of a session came nearest to, nearest first. */
export function nearestOthers(
  steps: readonly { gestureDistances: number[] | null; counts: unknown }[],
  { gestures }: RecogniserModel,
  except: string | null,
): { name: string; distance: number }[] {
  const taken = steps.flatMap(({ gestureDistances, counts }) =>
    gestureDistances === null || counts === null ? [] : [gestureDistances],
  )
  if (taken.length === 0) return []
  return gestures
    .map(({ id, name }, i) => {
      return { id, name, distance: Math.min(...taken.map((distances) => distances[i]!)) }
    })
    .filter(({ id, distance }) => id !== except && Number.isFinite(distance))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, MOST_NEAR)
}
