import type { CoreEvent } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'
import type { NearestWarping } from '../replay/unroll'
import { CHANNEL_NAMES } from '../words/en/channel-names'

/** One gesture's distance as it grew along the segment. */
export interface GrowthLine {
  name: string
  role: 'nearest' | 'runner-up' | 'other'
  /** Sum of local costs at each point of the segment; never falls. */
  grown: number[]
}

export interface Growth {
  /** Farthest first, so that what counts is drawn last. */
  lines: GrowthLine[]
  /** Of the nearest gesture; null where distances to templates are not what is decided on. */
  threshold: number | null
  /** End of the axis: the threshold, and twice the nearest distance, fit. */
  top: number
}

/** How the distance to each gesture grew; null where there is no template to grow to. */
export function growthOf(
  event: CoreEvent,
  warpings: readonly (NearestWarping | null)[],
  model: RecogniserModel,
): Growth | null {
  const found = warpings.flatMap((warping, index) =>
    warping === null ? [] : [{ index, warping, name: model.gestures[index]?.name ?? '' }],
  )
  if (found.length === 0) return null
  found.sort((a, b) => b.warping.distance - a.warping.distance)
  const nearest = found[found.length - 1]?.warping.distance ?? 0
  const threshold = model.kernel === null ? event.threshold : null
  return {
    lines: found.map(({ index, warping, name }) => ({
      name,
      grown: warping.grown,
      role: index === event.gesture ? 'nearest' : index === event.runnerUp ? 'runner-up' : 'other',
    })),
    threshold,
    top: Math.max(2 * nearest, 1.25 * (threshold ?? 0), 1),
  }
}

/** Names of the values of a point, in the order a segment holds them. */
export function channelNames({ normaliser }: RecogniserModel): string[] {
  return CHANNEL_NAMES.inOrder.filter((_, id) => (normaliser.channelMask >> id) & 1)
}
