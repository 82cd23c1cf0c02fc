import type { SensorPlace } from './rigid-body'
import type { TesterStyle } from './tester-style'

/**
 * From the middle of the fist to the phone's sensor, m: up the handle and a little above it. The
 * lever has no lateral part, so a left hand feels the exact mirror image of a right hand.
 */
export const LANTERN_LEVER_M: [number, number, number] = [0, 0.085, 0.012]

/** The lantern in a tester's hand. */
export function lanternIn(style: TesterStyle): SensorPlace {
  const side = style.hand === 'left' ? -1 : 1
  const { rollDeg, tiltDeg, skewDeg } = style.grip
  return {
    grip: { rollDeg: side * rollDeg, tiltDeg, skewDeg: side * skewDeg },
    leverM: LANTERN_LEVER_M,
  }
}
