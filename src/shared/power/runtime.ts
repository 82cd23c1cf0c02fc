import type { LedSetup, PowerSetup, Spread } from '../model/light'
import { capacityShare } from './cells'
import { cellsVolts, emitterMa, type Stage } from './headroom'

const HOURS_A_YEAR = 8_760

/** How much light is given, as full-on time of each emitter. */
export interface LightUse {
  /** Mean duty of red, green, blue at rest, 0 to 1. */
  restDuty: [number, number, number]
  /** Full-on seconds of each for one answer, above what rest gives in that time. */
  answerSeconds: [number, number, number]
}

/** Currents drawn from the cells, mA. */
export interface Drain {
  led: Spread
  processor: Spread
  sensor: Spread
  standby: Spread
  /** The cells' own loss, as if it were a current. */
  selfDischarge: Spread
  total: Spread
}

export const spreadOf = (of: (bound: keyof Spread) => number): Spread => ({
  min: of('min'),
  typ: of('typ'),
  max: of('max'),
})

/** When the LED draws least, as usual and most. */
const STAGE_OF: Record<keyof Spread, Stage> = { min: 'empty', typ: 'nominal', max: 'fresh' }

/** Mean duty of each emitter with so many answers an hour; never above full on. */
function meanDuty(use: LightUse, channel: 0 | 1 | 2, answersPerHour: number): number {
  return Math.min(1, use.restDuty[channel] + (use.answerSeconds[channel] * answersPerHour) / 3600)
}

function ledDrain(power: PowerSetup, led: LedSetup, use: LightUse): Spread {
  return spreadOf((bound) => {
    const stage = STAGE_OF[bound]
    // A converter takes more current the less voltage the cells have left.
    const factor =
      power.supply === 'boost'
        ? power.boostV / (cellsVolts(power, stage) * power.boostEfficiency)
        : 1
    const channels = [0, 1, 2] as const
    const ma = channels.reduce<number>((sum, channel) => {
      const current = emitterMa(power, led, led.emitters[channel], stage)[bound]
      return sum + current * meanDuty(use, channel, power.answersPerHour)
    }, 0)
    return ma * factor
  })
}

/** Mean currents while switched on. */
export function drainOf(power: PowerSetup, led: LedSetup, use: LightUse): Drain {
  const parts = {
    led: ledDrain(power, led, use),
    processor: power.processorMa,
    sensor: power.sensorMa,
    standby: power.standbyMa,
    selfDischarge: selfDischargeMa(power),
  }
  const total = spreadOf((bound) =>
    Object.values(parts).reduce((sum, part) => sum + part[bound], 0),
  )
  return { ...parts, total }
}

function selfDischargeMa({ capacityMah, selfDischargePercent }: PowerSetup): Spread {
  return spreadOf((bound) => (capacityMah[bound] * selfDischargePercent) / 100 / HOURS_A_YEAR)
}

/** Hours from full to empty: capacity at this drain over the drain. */
export function runtimeHours(capacityMah: number, averageMa: number): number {
  return averageMa > 0 ? capacityMah / averageMa : Number.POSITIVE_INFINITY
}

/** Capacity that is left at a drain of so many mA, and the hours it lasts. */
export function runtime(power: PowerSetup, total: Spread): { capacityMah: Spread; hours: Spread } {
  // The least hours come of the least capacity and the most drain.
  const drainFor = { min: total.max, typ: total.typ, max: total.min }
  const capacityMah = spreadOf(
    (bound) => power.capacityMah[bound] * capacityShare(power.cell, drainFor[bound]),
  )
  return {
    capacityMah,
    hours: spreadOf((bound) => runtimeHours(capacityMah[bound], drainFor[bound])),
  }
}

/** Years until the cells are empty while the prop is switched off. */
export function shelfYears(power: PowerSetup): Spread {
  const own = selfDischargeMa(power)
  const hours = (bound: keyof Spread, other: keyof Spread) =>
    runtimeHours(power.capacityMah[bound], power.offUa[other] / 1000 + own[bound])
  return {
    min: hours('min', 'max') / HOURS_A_YEAR,
    typ: hours('typ', 'typ') / HOURS_A_YEAR,
    max: hours('max', 'min') / HOURS_A_YEAR,
  }
}

/** Largest current at one instant, mA: all emitters that the limit allows, and the board. */
export function peakMa(power: PowerSetup, led: LedSetup): number {
  const all = led.emitters.reduce(
    (sum, emitter) => sum + emitterMa(power, led, emitter, 'fresh').max,
    0,
  )
  const light = led.limitMa > 0 ? Math.min(all, led.limitMa) : all
  return light + power.processorMa.max + power.sensorMa.max + power.standbyMa.max
}

export interface RuntimePoint {
  answersPerHour: number
  hours: Spread
}

/** Hours against answers an hour, for a plot: evenly over 0 to `most`. */
export function runtimeCurve(
  power: PowerSetup,
  led: LedSetup,
  use: LightUse,
  most: number,
  points = 25,
): RuntimePoint[] {
  return Array.from({ length: points }, (_, i) => {
    const answersPerHour = (most * i) / (points - 1)
    const changed = { ...power, answersPerHour }
    return { answersPerHour, hours: runtime(changed, drainOf(changed, led, use).total).hours }
  })
}
