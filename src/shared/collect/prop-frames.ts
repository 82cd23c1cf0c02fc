import { rotate } from '../attitude/quaternion'
import { trackAttitude } from '../attitude/track-attitude'
import type { Vector3 } from '../attitude/vector'
import { facingAhead } from '../replay/prop-poses'
import { demonstrationSamples } from './demonstration'
import type { Demonstration } from './plan'

/** To the right and down on the screen; the prop is 1 long and held at 0, 0. */
export type ScreenPoint = readonly [right: number, down: number]

/** The prop as it stands at one instant, seen by the one who holds it, from behind and above. */
export interface PropFrame {
  /** Lower end of the handle. */
  tail: ScreenPoint
  /** Where the lantern hangs. */
  tip: ScreenPoint
  /** End of the mark across the handle, which shows how far it is rolled. */
  mark: ScreenPoint
}

/** The prop's points, in its own axes: y along it, z out of the side with the mark. */
const TAIL: Vector3 = [0, -0.3, 0]
const TIP: Vector3 = [0, 0.7, 0]
const MARK: Vector3 = [0, 0.1, 0.22]

/** The eye looks ahead, 35° down and 25° from the left. */
const ELEVATION = (35 * Math.PI) / 180
const AZIMUTH = (25 * Math.PI) / 180

/** A demonstration as pictures, one a period, by the attitude that its samples turn through. */
export function propFrames(demonstration: Demonstration): PropFrame[] {
  const attitudes = trackAttitude(demonstrationSamples(demonstration), 1)
  return facingAhead(attitudes, [0, 1, 0]).map((pose) => ({
    tail: seen(rotate(pose, TAIL)),
    tip: seen(rotate(pose, TIP)),
    mark: seen(rotate(pose, MARK)),
  }))
}

/** The picture between two, for a screen that is faster than the periods. @param share 0 to 1 */
export function between(from: PropFrame, to: PropFrame, share: number): PropFrame {
  const mixed = (a: ScreenPoint, b: ScreenPoint): ScreenPoint => [
    a[0] + (b[0] - a[0]) * share,
    a[1] + (b[1] - a[1]) * share,
  ]
  return {
    tail: mixed(from.tail, to.tail),
    tip: mixed(from.tip, to.tip),
    mark: mixed(from.mark, to.mark),
  }
}

/** Parallel projection of right, ahead, up. */
function seen([right, ahead, up]: Vector3): ScreenPoint {
  const across = right * Math.cos(AZIMUTH) + ahead * Math.sin(AZIMUTH)
  const away = ahead * Math.cos(AZIMUTH) - right * Math.sin(AZIMUTH)
  return [across, -(up * Math.cos(ELEVATION) + away * Math.sin(ELEVATION))]
}
