import type { Emitter, LedSetup, PowerSetup, Spread } from '../model/light'
import { type Failure, fail, ok, type Result } from '../model/result'
import { EMITTER_NAMES, supplyVolts } from './headroom'

type Named = [string, string, Spread]

/**
 * Checks cells and what draws on them.
 * @returns failures named by the field: 'power/capacity', 'power/volts', 'power/series',
 *   'power/load', 'power/boost'
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
    ['power/load', 'processor’s current', power.processorMa],
    ['power/load', 'sensor’s current', power.sensorMa],
    ['power/load', 'standby current', power.standbyMa],
    ['power/load', 'current while switched off', power.offUa],
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
 * @returns failures named by the field: 'led/pwm', 'led/red', 'led/green', 'led/blue'
 */
export function checkLed(led: LedSetup, power: PowerSetup, clockHz: number): Result<LedSetup> {
  const timer = timerProblem(led, clockHz)
  if (timer !== null) return timer
  for (const [index, emitter] of led.emitters.entries()) {
    const problem = emitterProblem(EMITTER_NAMES[index]!, emitter, power)
    if (problem !== null) return problem
  }
  return ok(led)
}

function timerProblem({ pwmHz, pwmBits }: LedSetup, clockHz: number): Failure | null {
  if (!(pwmHz > 0)) return fail('led/pwm', 'PWM of 0 Hz is no PWM: enter its frequency in Hz.')
  if (pwmHz * 2 ** pwmBits <= clockHz) return null
  const most = Math.floor(clockHz / 2 ** pwmBits)
  return fail(
    'led/pwm',
    `A clock of ${clockHz / 1e6} MHz counts ${pwmBits} bits at most ${most} times a second: lower the frequency or the bits.`,
  )
}

function emitterProblem(
  name: (typeof EMITTER_NAMES)[number],
  { forwardV, currentMa }: Emitter,
  power: PowerSetup,
): Failure | null {
  const code = `led/${name}`
  if (!isOrdered(forwardV)) return fail(code, disorder(`forward voltage of ${name}`, forwardV))
  const supply = supplyVolts(power, 'fresh')
  if (forwardV.typ >= supply) {
    return fail(
      code,
      `${name} needs ${forwardV.typ} V and the supply gives ${supply.toFixed(1)} V even when fresh: it stays dark. Take more cells or a converter.`,
    )
  }
  return currentMa > 0 ? null : fail(code, `The current of ${name} must be above 0 mA.`)
}

function isOrdered({ min, typ, max }: Spread): boolean {
  return min >= 0 && min <= typ && typ <= max
}

function disorder(name: string, { min, typ, max }: Spread): string {
  return `The ${name} must rise from least to most, and is ${min}, ${typ}, ${max}: put it in order.`
}
