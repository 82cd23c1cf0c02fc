import type { Emitter, LedSetup, PowerSetup, Spread } from '../model/light'
import { POWER_PRESETS } from '../words/en/power-presets'
import { ledCurrentMa, nextStandard, seriesResistor } from './resistor'

export const EMITTER_NAMES = ['red', 'green', 'blue'] as const
export type EmitterName = (typeof EMITTER_NAMES)[number]
export const STAGES = ['fresh', 'nominal', 'empty'] as const
export type Stage = (typeof STAGES)[number]

const CELL_VOLTS: Record<Stage, (power: PowerSetup) => number> = {
  fresh: ({ freshV }) => freshV,
  nominal: ({ nominalV }) => nominalV,
  empty: ({ endV }) => endV,
}

/** Voltage of all cells together without load, V. */
export function cellsVolts(power: PowerSetup, stage: Stage): number {
  return power.series * CELL_VOLTS[stage](power)
}

/** Voltage that the LEDs hang on, V. */
export function supplyVolts(power: PowerSetup, stage: Stage): number {
  return power.supply === 'boost' ? power.boostV : cellsVolts(power, stage)
}

/** Everything in series with one LED, ohm; behind a converter the cells' own resistance is not. */
function pathOhm(power: PowerSetup, led: LedSetup, emitter: Emitter): number {
  const cells = power.supply === 'boost' ? 0 : power.series * power.cellOhm
  return emitter.resistorOhm + led.driverOhm + cells
}

/** Current of one LED at full duty, mA: least with the highest forward voltage. */
export function emitterMa(
  power: PowerSetup,
  led: LedSetup,
  emitter: Emitter,
  stage: Stage,
): Spread {
  const volts = supplyVolts(power, stage)
  const ohm = pathOhm(power, led, emitter)
  const at = (forwardV: number) => ledCurrentMa(volts, forwardV, ohm)
  const { min, typ, max } = emitter.forwardV
  return { min: at(max), typ: at(typ), max: at(min) }
}

/** Resistor for the wanted current from fresh cells at the typical forward voltage, ohm. */
export function wantedResistor(power: PowerSetup, led: LedSetup, emitter: Emitter) {
  const volts = supplyVolts(power, 'fresh')
  const ohm = seriesResistor(volts, emitter.forwardV.typ, emitter.currentMa, led.driverOhm)
  return {
    ohm,
    e24: ohm > 0 ? nextStandard(ohm, 'E24') : 0,
    e12: ohm > 0 ? nextStandard(ohm, 'E12') : 0,
  }
}

/**
 * A colour that the cells cannot feed to their end: the supply at its lowest is below the largest
 * forward voltage and what the driver takes. Null when there is headroom.
 */
export function headroomProblem(
  power: PowerSetup,
  led: LedSetup,
  emitter: Emitter,
): { needsV: number; hasV: number; goesOutAtV: number } | null {
  const needsV = emitter.forwardV.max + (emitter.currentMa / 1000) * led.driverOhm
  const hasV = supplyVolts(power, 'empty')
  if (hasV >= needsV) return null
  return { needsV, hasV, goesOutAtV: emitter.forwardV.typ / power.series }
}

export interface Alternative {
  name: string
  power: PowerSetup
  led: LedSetup
}

/** The same with more cells, and with a converter, resistors chosen anew. */
export function alternatives(power: PowerSetup, led: LedSetup): Alternative[] {
  const withResistors = (name: string, changed: PowerSetup): Alternative => {
    const emitters = led.emitters.map((emitter) => ({
      ...emitter,
      resistorOhm: wantedResistor(changed, led, emitter).e24,
    })) as LedSetup['emitters']
    return { name, power: changed, led: { ...led, emitters } }
  }
  const more = [1, 2].map((extra) => power.series + extra)
  return [
    ...more.map((series) =>
      withResistors(POWER_PRESETS.cellsInSeries(series), { ...power, series, supply: 'direct' }),
    ),
    withResistors(POWER_PRESETS.boostTo5V, { ...power, supply: 'boost', boostV: 5 }),
  ]
}
