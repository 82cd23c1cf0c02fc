import type { Spread } from '../model/light'
import { MEMORY, readIn, type Source } from './sources'

export interface GenericLed {
  name: string
  /** V at 20 mA. */
  forwardV: Spread
  typical: Source
  limits: Source
}

const TYPICAL = readIn('typical forward voltages at 20 mA as collected on LED reference pages')

/** Common 20 mA LEDs. The typical value was read, the limits are from memory. */
export const GENERIC_LEDS = {
  red: led('red', 1.8, 2.0, 2.4),
  green: led('green (true green)', 2.9, 3.2, 3.5),
  blue: led('blue', 2.9, 3.2, 3.8),
  white: led('white', 2.9, 3.3, 3.8),
  yellowGreen: led('yellow-green', 1.9, 2.2, 2.4),
} as const

function led(name: string, min: number, typ: number, max: number): GenericLed {
  return { name, forwardV: { min, typ, max }, typical: TYPICAL, limits: MEMORY }
}
