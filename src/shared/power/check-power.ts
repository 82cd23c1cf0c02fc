import type { Emitter, LedSetup, PowerSetup, Spread } from '../model/light'
import { type Failure, fail, ok, type Result } from '../model/result'
import { POWER_TROUBLE } from '../words/en/power-trouble'
import { EMITTER_NAMES, type EmitterName, supplyVolts } from './headroom'

type Named = [string, Parameters<typeof POWER_TROUBLE.loadOrder>[0], Spread]

/**
 * Checks cells and what draws on them.
 * @returns failures named by the field: 'power/capacity', 'power/volts', 'power/series',
 *   'power/load', 'power/boost'
 */
export function checkPower(power: PowerSetup): Result<PowerSetup> {
  const { capacityMah, freshV, nominalV, endV, series } = power
  if (!(capacityMah.min > 0)) {
    return fail('power/capacity', POWER_TROUBLE.noCapacity)
  }
  if (!Number.isInteger(series) || series < 1) {
    return fail('power/series', POWER_TROUBLE.noCell)
  }
  if (!(endV > 0 && endV < nominalV && nominalV <= freshV)) {
    return fail('power/volts', POWER_TROUBLE.volts(power))
  }
  const spreads: Named[] = [
    ['power/capacity', 'capacity', capacityMah],
    ['power/load', 'processor', power.processorMa],
    ['power/load', 'sensor', power.sensorMa],
    ['power/load', 'standby', power.standbyMa],
    ['power/load', 'off', power.offUa],
  ]
  for (const [code, name, spread] of spreads) {
    if (!isOrdered(spread)) return fail(code, POWER_TROUBLE.loadOrder(name, spread))
  }
  if (power.supply === 'boost' && power.boostV <= power.series * power.nominalV) {
    return fail('power/boost', POWER_TROUBLE.converter(power.boostV))
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
  if (!(pwmHz > 0)) return fail('led/pwm', POWER_TROUBLE.noPwm)
  if (pwmHz * 2 ** pwmBits <= clockHz) return null
  const most = Math.floor(clockHz / 2 ** pwmBits)
  return fail('led/pwm', POWER_TROUBLE.timer({ clockHz, pwmBits, mostHz: most }))
}

function emitterProblem(
  name: EmitterName,
  { forwardV, currentMa }: Emitter,
  power: PowerSetup,
): Failure | null {
  const code = `led/${name}`
  if (!isOrdered(forwardV)) return fail(code, POWER_TROUBLE.forwardOrder(name, forwardV))
  const supply = supplyVolts(power, 'fresh')
  if (forwardV.typ >= supply) {
    return fail(code, POWER_TROUBLE.staysDark(name, forwardV.typ, supply))
  }
  return currentMa > 0 ? null : fail(code, POWER_TROUBLE.noCurrent(name))
}

function isOrdered({ min, typ, max }: Spread): boolean {
  return min >= 0 && min <= typ && typ <= max
}
