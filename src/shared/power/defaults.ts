import type { Emitter, LedSetup, PowerSetup } from '../model/light'
import { cellPreset } from './cells'
import { GENERIC_LEDS } from './leds'

/** Of 20 mA LEDs, at half their current; resistors for three fresh alkaline cells, E24. */
export function defaultLed(): LedSetup {
  const emitter = (key: keyof typeof GENERIC_LEDS, resistorOhm: number): Emitter => ({
    forwardV: { ...GENERIC_LEDS[key].forwardV },
    currentMa: 10,
    resistorOhm,
  })
  return {
    // Above 3003 Hz no effect of PWM is to be seen (IEEE Std 1789-2015).
    pwmHz: 4000,
    pwmBits: 10,
    emitters: [emitter('red', 300), emitter('green', 160), emitter('blue', 160)],
    limitMa: 20,
    driverOhm: 2,
  }
}

/** Three alkaline AA cells; what the board draws is from memory of common parts, to be measured. */
export function defaultPower(): PowerSetup {
  return {
    cell: 'aa-alkaline',
    series: 3,
    ...cellPreset('aa-alkaline').electrical,
    supply: 'direct',
    boostV: 5,
    boostEfficiency: 0.85,
    processorMa: { min: 2, typ: 5, max: 10 },
    sensorMa: { min: 0.3, typ: 0.6, max: 1 },
    standbyMa: { min: 0.05, typ: 0.2, max: 1 },
    offUa: { min: 0.1, typ: 1, max: 5 },
    answersPerHour: 60,
  }
}
