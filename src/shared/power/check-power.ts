import type { LedSetup, PowerSetup, Spread } from '../model/light'
import { fail, ok, type Result } from '../model/result'
import { EMITTER_NAMES, supplyVolts } from './headroom'

type Named = [string, string, Spread]

/**
 * Checks cells and what draws on them.
 * @returns failures named by the field: 'power/capacity', 'power/volts', 'power/series',
 *   'power/spread', 'power/boost'
 */
export function checkPower(power: PowerSetup): Result<PowerSetup> {
  const { capacityMah, freshV, nominalV, endV, series } = power
  if (!(capacityMah.min > 0)) {
    return fail('power/capacity', 'Cells of 0 mAh feed nothing: enter the capacity of one cell.')
  }
  if (!Number.isInteger(series) || series < 1) {
    return fail('power/series', 'There is at least one cell: enter how many are in series.')
  }
  if (!(endV > 0 && endV < nominalV && nominalV <= freshV)) {
    return fail(
      'power/volts',
      `A cell falls from fresh (${freshV} V) through nominal (${nominalV} V) to empty (${endV} V): enter them in this order.`,
    )
  }
  const spreads: Named[] = [
    ['power/capacity', 'capacity', capacityMah],
    ['power/spread', 'processor’s current', power.processorMa],
    ['power/spread', 'sensor’s current', power.sensorMa],
    ['power/spread', 'standby current', power.standbyMa],
    ['power/spread', 'current while switched off', power.offUa],
  ]
  for (const [code, name, spread] of spreads) {
    if (!isOrdered(spread)) return fail(code, disorder(name, spread))
  }
  if (power.supply === 'boost' && power.boostV <= power.series * power.nominalV) {
    return fail(
      'power/boost',
      `The converter gives ${power.boostV} V, which the cells have themselves: raise it or leave it out.`,
    )
  }
  return ok(power)
}

/**
 * Checks the drive of the LED against the timer and the supply.
 * @param clockHz of the board, which the timer counts
 * @returns failures 'led/pwm', 'led/forward', 'led/current'
 */
export function checkLed(led: LedSetup, power: PowerSetup, clockHz: number): Result<LedSetup> {
  const { pwmHz, pwmBits } = led
  if (!(pwmHz > 0)) return fail('led/pwm', 'PWM of 0 Hz is no PWM: enter its frequency in Hz.')
  if (pwmHz * 2 ** pwmBits > clockHz) {
    const most = Math.floor(clockHz / 2 ** pwmBits)
    return fail(
      'led/pwm',
      `A clock of ${clockHz / 1e6} MHz counts ${pwmBits} bits at most ${most} times a second: lower the frequency or the bits.`,
    )
  }
  for (const [index, emitter] of led.emitters.entries()) {
    const name = EMITTER_NAMES[index] ?? ''
    if (!isOrdered(emitter.forwardV)) {
      return fail('led/forward', disorder(`forward voltage of ${name}`, emitter.forwardV))
    }
    const supply = supplyVolts(power, 'fresh')
    if (emitter.forwardV.typ >= supply) {
      return fail(
        'led/forward',
        `${name} needs ${emitter.forwardV.typ} V and the supply gives ${supply.toFixed(1)} V even when fresh: it stays dark. Take more cells or a converter.`,
      )
    }
    if (!(emitter.currentMa > 0)) {
      return fail('led/current', `The current of ${name} must be above 0 mA.`)
    }
  }
  return ok(led)
}

function isOrdered({ min, typ, max }: Spread): boolean {
  return min >= 0 && min <= typ && typ <= max
}

function disorder(name: string, { min, typ, max }: Spread): string {
  return `The ${name} must rise from least to most, and is ${min}, ${typ}, ${max}: put it in order.`
}
