import type { Drift } from '../../attitude/drift'
import { type Quaternion, rotate } from '../../attitude/quaternion'
import type { Vector3 } from '../../attitude/vector'
import { shortNumber, UNIT_SPACE } from './numbers'

const DEGREE = Math.PI / 180

/** Where the tip points: its height above the level, and how far to the right of where it began. */
export function tipWords(pose: Quaternion, tip: Vector3): string {
  const [x, y, z] = rotate(pose, tip)
  const up = Math.round(Math.asin(Math.max(-1, Math.min(1, z))) / DEGREE)
  const height = `${Math.abs(up)}° ${up < 0 ? 'down' : 'up'}`
  if (Math.abs(up) > 75) return `tip ${height}`
  const right = Math.round(Math.atan2(x, y) / DEGREE)
  return `tip ${height}, ${Math.abs(right)}° ${right < 0 ? 'left' : 'right'}`
}

/**
 * How far the attitude may be off, with what this recording shows of it.
 * @param hasGyro whether anything turned was measured at all
 */
export function driftWords({ rest, turn }: Drift, hasGyro: boolean): string {
  if (!hasGyro) {
    return 'No gyroscope: the attitude follows gravity alone, lags by about a tenth of a second, and its heading is not known.'
  }
  const still =
    rest === null
      ? 'No rest in this recording, so what the gyroscope shows at rest is not known.'
      : `At rest the gyroscope shows ${shortNumber(rest.dps)}${UNIT_SPACE}deg/s (median over ${shortNumber(rest.seconds)}${UNIT_SPACE}s of rest): the heading drifts by up to that much, up and down are held by gravity.`
  const turned =
    turn === null
      ? 'Drift after a turn is not known: that needs rest before and after.'
      : `Turned by ${Math.round(turn.turnedDeg)}° in all within ${shortNumber(turn.seconds)}${UNIT_SPACE}s, the gyroscope alone is ${turn.errorDeg.toFixed(1)}° off gravity at the end.`
  return `${still} ${turned}`
}
