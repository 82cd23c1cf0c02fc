import type { Spread } from '../model/light'
import { FIGURE_SOURCES } from '../words/en/figure-sources'
import { MEMORY, readIn, type Source } from './sources'

export interface GenericLed {
  /** V at 20 mA. */
  forwardV: Spread
  typical: Source
  limits: Source
}

const TYPICAL = readIn(FIGURE_SOURCES.ledPages)

/** Common 20 mA LEDs. The typical value was read, the limits are from memory. */
export const GENERIC_LEDS = {
  red: led(1.8, 2.0, 2.4),
  green: led(2.9, 3.2, 3.5),
  blue: led(2.9, 3.2, 3.8),
  white: led(2.9, 3.3, 3.8),
  yellowGreen: led(1.9, 2.2, 2.4),
} as const

function led(min: number, typ: number, max: number): GenericLed {
  return { forwardV: { min, typ, max }, typical: TYPICAL, limits: MEMORY }
}
