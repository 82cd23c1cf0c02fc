import { add, scale, type Vector3 } from '../attitude/vector'
import { tipPath } from '../ribbon/tip-path'
import { demonstrationSamples } from './demonstration'
import type { Demonstration } from './plan'

/** To the right and down on the screen, metres; the fist starts at 0, 0. */
export type ScreenPoint = readonly [right: number, down: number]

/** The prop as it stands at one instant, seen by the one who holds it, from behind and above. */
export interface PropFrame {
  fist: ScreenPoint
  /** Lower end of the handle. */
  tail: ScreenPoint
  /** Where the lantern hangs. */
  tip: ScreenPoint
  /** End of the mark across the handle, which shows how far it is rolled. */
  mark: ScreenPoint
}

/** The axis along the prop, as the phone is held: its top is the tip. */
const TIP: Vector3 = [0, 1, 0]
/** From the fist along the prop, and out of it, metres. */
const TIP_M = 0.3
const TAIL_M = -0.12
const MARK_AT_M = 0.05
const MARK_M = 0.08

/** The eye looks ahead, 35° down and 25° from the left. */
const ELEVATION = (35 * Math.PI) / 180
const AZIMUTH = (25 * Math.PI) / 180

/**
 * A demonstration as pictures, one a period, from where the movement begins to where it ends: turned by
 * the attitude of its samples and carried along by their acceleration, as for ribbons.
 * @returns empty when there are too few samples to show
 */
export function propFrames(demonstration: Demonstration): PropFrame[] {
  const path = tipPath(demonstrationSamples(demonstration), TIP, 1)
  if (path === null) return []
  return path.fists.map((fist, k) => {
    const [tip, front] = [path.tips[k]!, path.fronts[k]!]
    const along = (metres: number) => add(fist, scale(tip, metres))
    return {
      fist: seen(fist),
      tail: seen(along(TAIL_M)),
      tip: seen(along(TIP_M)),
      mark: seen(add(along(MARK_AT_M), scale(front, MARK_M))),
    }
  })
}

/** The picture between two, for a screen that is faster than the periods. @param share 0 to 1 */
export function between(from: PropFrame, to: PropFrame, share: number): PropFrame {
  const mixed = (a: ScreenPoint, b: ScreenPoint): ScreenPoint => [
    a[0] + (b[0] - a[0]) * share,
    a[1] + (b[1] - a[1]) * share,
  ]
  return {
    fist: mixed(from.fist, to.fist),
    tail: mixed(from.tail, to.tail),
    tip: mixed(from.tip, to.tip),
    mark: mixed(from.mark, to.mark),
  }
}

export interface ViewBox {
  left: number
  top: number
  /** Of both sides: the field is square. */
  side: number
}

/** The field that holds all pictures, with `margin` metres around. */
export function viewBoxOf(frames: readonly PropFrame[], margin: number): ViewBox {
  const points = frames.flatMap(({ fist, tail, tip, mark }) => [fist, tail, tip, mark])
  const rights = points.map(([right]) => right)
  const downs = points.map(([, down]) => down)
  const [left, right] = [Math.min(...rights), Math.max(...rights)]
  const [top, bottom] = [Math.min(...downs), Math.max(...downs)]
  const side = Math.max(right - left, bottom - top) + 2 * margin
  return { left: (left + right - side) / 2, top: (top + bottom - side) / 2, side }
}

/** Parallel projection of right, ahead, up. */
function seen([right, ahead, up]: Vector3): ScreenPoint {
  const across = right * Math.cos(AZIMUTH) + ahead * Math.sin(AZIMUTH)
  const away = ahead * Math.cos(AZIMUTH) - right * Math.sin(AZIMUTH)
  return [across, -(up * Math.cos(ELEVATION) + away * Math.sin(ELEVATION))]
}
