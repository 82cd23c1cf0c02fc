import { groupDigits, shortNumber, UNIT_SPACE } from './numbers'

/** A step in thousandths of the unit, with the digits of a data sheet. */
const stepText = (step: number) =>
  step >= 100 ? shortNumber(step) : String(Number(step.toPrecision(4)))

/** A range of a sensor: its step, and how far 16 bits reach. */
export const SENSOR_RANGE = {
  step: ({ fullScale, nanoPerLsb }: { fullScale: number; nanoPerLsb: number }, unit: string) =>
    `±${fullScale}${UNIT_SPACE}${unit}: ${stepText(nanoPerLsb / 1e6)}${UNIT_SPACE}m${unit} a count`,
  reach: (reach: number, unit: string) =>
    `16 bits reach to ±${groupDigits(reach)}${UNIT_SPACE}${unit} in this range.`,
}
