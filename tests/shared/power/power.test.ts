import { describe, expect, test } from 'vitest'
import type { LedSetup, PowerSetup } from '../../../src/shared/model/light'
import { cautions } from '../../../src/shared/power/cautions'
import { CELL_PRESETS, capacityShare, cellPreset } from '../../../src/shared/power/cells'
import { checkLed, checkPower } from '../../../src/shared/power/check-power'
import { defaultLed, defaultPower } from '../../../src/shared/power/defaults'
import {
  alternatives,
  emitterMa,
  headroomProblem,
  wantedResistor,
} from '../../../src/shared/power/headroom'
import {
  ledCurrentMa,
  nextStandard,
  resistorMw,
  seriesResistor,
} from '../../../src/shared/power/resistor'
import {
  drainOf,
  peakMa,
  runtime,
  runtimeCurve,
  runtimeHours,
  shelfYears,
} from '../../../src/shared/power/runtime'

const NO_LIGHT = { restDuty: [0, 0, 0], answerSeconds: [0, 0, 0] } as Parameters<typeof drainOf>[2]

describe('resistors', () => {
  test('5 V and 20 mA: 150 ohm for red of 2.0 V, 90 ohm for blue of 3.2 V (a forum’s part data)', () => {
    expect(seriesResistor(5, 2.0, 20)).toBeCloseTo(150, 9)
    expect(seriesResistor(5, 3.2, 20)).toBeCloseTo(90, 9)
    expect(resistorMw(5, 2.0, 20)).toBeCloseTo(60, 9)
    expect(resistorMw(5, 3.2, 20)).toBeCloseTo(36, 9)
  })

  test('the next standard value is never smaller: 91 of E24 (19.78 mA), 100 of E12 (18 mA)', () => {
    expect(nextStandard(150, 'E24')).toBe(150)
    expect(nextStandard(90, 'E24')).toBe(91)
    expect(nextStandard(90, 'E12')).toBe(100)
    expect(ledCurrentMa(5, 3.2, 91)).toBeCloseTo(19.78, 2)
    expect(ledCurrentMa(5, 3.2, 100)).toBeCloseTo(18, 9)
  })

  /** A table of LED notes for a forward voltage of 1.8 V. */
  test.each([
    [3.3, 20, 75],
    [5, 20, 160],
    [12, 20, 510],
    [3, 2, 620],
    [3.3, 2, 750],
    [5, 2, 1600],
    [12, 2, 5100],
  ])('%f V, %f mA and 1.8 V take %f ohm of E24', (volts, ma, ohm) => {
    expect(nextStandard(seriesResistor(volts, 1.8, ma), 'E24')).toBe(ohm)
  })

  test('3.0 V, 20 mA and 1.8 V take 68 ohm of E12', () => {
    expect(nextStandard(seriesResistor(3, 1.8, 20), 'E12')).toBe(68)
  })

  test('every decade has its values, and between two the larger is taken', () => {
    expect([0.95, 9.5, 95, 950, 9500].map((ohm) => nextStandard(ohm, 'E24'))).toEqual([
      1, 10, 100, 1000, 10_000,
    ])
    expect(nextStandard(101, 'E24')).toBe(110)
    expect(nextStandard(8200.1, 'E12')).toBe(10_000)
  })
})

describe('current over the life of the cells', () => {
  test('3 V, red of 2.0 V, 10 mA: 100 ohm', () => {
    expect(seriesResistor(3, 2, 10)).toBeCloseTo(100, 9)
  })

  test('a lithium cell of 4.2 V, blue of 3.1 V, 10 mA: 110 ohm, then 5.45 mA at 3.7 V, 1.8 mA at 3.3 V', () => {
    expect(seriesResistor(4.2, 3.1, 10)).toBeCloseTo(110, 9)
    expect(ledCurrentMa(3.7, 3.1, 110)).toBeCloseTo(5.45, 2)
    expect(ledCurrentMa(3.3, 3.1, 110)).toBeCloseTo(1.8, 1)
  })

  test('blue of 3.0 V through 33 ohm: 9.1 mA at 3.3 V, 3.0 mA at 3.1 V, none at 3.0 V and below', () => {
    expect(
      [3.3, 3.1, 3.0, 2.4].map((volts) => Number(ledCurrentMa(volts, 3.0, 33).toFixed(1))),
    ).toEqual([9.1, 3, 0, 0])
  })
})

/** Two 1.5 V cells: 3.2 V fresh, 3.0 nominal, 1.8 empty. */
const TWO: PowerSetup = { ...defaultPower(), series: 2, cellOhm: 0 }
const LED: LedSetup = {
  ...defaultLed(),
  driverOhm: 0,
  emitters: [
    { forwardV: { min: 1.8, typ: 2, max: 2.4 }, currentMa: 10, resistorOhm: 120 },
    { forwardV: { min: 2.9, typ: 3, max: 3.2 }, currentMa: 10, resistorOhm: 33 },
    { forwardV: { min: 2.9, typ: 3, max: 3.2 }, currentMa: 10, resistorOhm: 33 },
  ],
}

describe('headroom', () => {
  test('two alkaline cells cannot feed blue to their end, and hardly when fresh', () => {
    const blue = LED.emitters[2]
    expect(headroomProblem(TWO, LED, blue)).toMatchObject({ needsV: 3.2, hasV: 1.8 })
    expect(emitterMa(TWO, LED, blue, 'fresh').typ).toBeCloseTo(6.06, 2)
    expect(emitterMa(TWO, LED, blue, 'nominal').typ).toBe(0)
    expect(emitterMa(TWO, LED, LED.emitters[0], 'nominal').typ).toBeCloseTo(8.33, 2)
  })

  test('what the driver takes counts: V < Vf + I R of the driver', () => {
    const power = { ...TWO, series: 1, freshV: 4, nominalV: 3.5, endV: 3.21 }
    expect(headroomProblem(power, LED, LED.emitters[2])).toBeNull()
    const driven = { ...LED, driverOhm: 2 }
    expect(headroomProblem(power, driven, LED.emitters[2])?.needsV).toBeCloseTo(3.22, 9)
  })

  test('three cells or a converter help, with resistors chosen for them', () => {
    const [three, , boost] = alternatives(TWO, LED)
    expect(three?.name).toBe('3 cells in series')
    const blue = three!.led.emitters[2]
    expect(blue.resistorOhm).toBe(180)
    expect(emitterMa(three!.power, three!.led, blue, 'nominal').typ).toBeCloseTo(8.33, 2)
    expect(headroomProblem(boost!.power, boost!.led, boost!.led.emitters[2])).toBeNull()
    expect(wantedResistor(boost!.power, boost!.led, LED.emitters[2]).e24).toBe(200)
  })
})

describe('runtime', () => {
  test('is capacity over current: 1000 mAh and 25 mA give 40 h', () => {
    expect(runtimeHours(1000, 25)).toBe(40)
    expect(runtimeHours(150 * 0.8, 30)).toBeCloseTo(4, 9)
  })

  test('2 % of the time at 20 mA and the rest at 1.5 mA is 1.87 mA: 534.8 h of 1000 mAh', () => {
    expect(runtimeHours(1000, 0.02 * 20 + 0.98 * 1.5)).toBeCloseTo(534.8, 1)
  })

  test('adds up what draws, with the LED by its duty and the answers', () => {
    const fixed = (value: number) => ({ min: value, typ: value, max: value })
    const power: PowerSetup = {
      ...TWO,
      cell: 'custom',
      capacityMah: fixed(1000),
      selfDischargePercent: 0,
      processorMa: fixed(1),
      sensorMa: fixed(0.4),
      standbyMa: fixed(0.1),
      answersPerHour: 36,
    }
    // 2 s full on for each of 36 answers an hour is 2 % of the time.
    const use = { ...NO_LIGHT, answerSeconds: [2, 0, 0] as [number, number, number] }
    const drain = drainOf(power, LED, use)
    expect(drain.led.typ).toBeCloseTo(0.02 * (1 / 0.12), 6)
    expect(drain.total.typ).toBeCloseTo(1.5 + drain.led.typ, 9)
    expect(runtime(power, drain.total).hours.typ).toBeCloseTo(1000 / drain.total.typ, 6)
    expect(drain.led.max).toBeGreaterThan(drain.led.typ)
    expect(drain.led.min).toBe(0)
  })

  test('a converter takes the power from the cells at its efficiency', () => {
    const power: PowerSetup = { ...TWO, supply: 'boost', boostV: 5, boostEfficiency: 0.8 }
    const use = { ...NO_LIGHT, restDuty: [1, 0, 0] as [number, number, number] }
    // Red: (5 - 2) / 120 = 25 mA at 5 V; at 3 V and 80 %: 25 * 5 / 2.4.
    expect(drainOf(power, LED, use).led.typ).toBeCloseTo((25 * 5) / 2.4, 6)
  })

  test('least, typical and most are in order, and fall with more answers', () => {
    const use = { ...NO_LIGHT, answerSeconds: [1, 1, 0] as [number, number, number] }
    const curve = runtimeCurve(defaultPower(), defaultLed(), use, 600)
    let before = Number.POSITIVE_INFINITY
    for (const { hours } of curve) {
      expect(hours.min).toBeLessThan(hours.typ)
      expect(hours.typ).toBeLessThan(hours.max)
      expect(hours.typ).toBeLessThan(before)
      before = hours.typ
    }
  })

  test('switched off, alkaline cells are emptied by themselves before a microampere does it', () => {
    const power = {
      ...TWO,
      capacityMah: { min: 1000, typ: 1000, max: 1000 },
      selfDischargePercent: 3,
    }
    // 1000 mAh / (30 mAh a year + 1 uA * 8760 h = 8.76 mAh a year).
    expect(shelfYears(power).typ).toBeCloseTo(1000 / 38.76, 6)
  })

  test('a coin cell is not made for 20 mA: the peak is above its 3 mA', () => {
    const coin = { ...defaultPower(), ...cellPreset('cr2032').electrical, series: 1 }
    expect(peakMa(coin, defaultLed())).toBeGreaterThan(coin.maxMa)
    // 20 mA through 15 to 30 ohm: a sag of 0.3 to 0.6 V (makers’ internal resistance 10 to 40 ohm).
    expect((20 * coin.cellOhm) / 1000).toBeGreaterThanOrEqual(0.3)
    expect((20 * coin.cellOhm) / 1000).toBeLessThanOrEqual(0.6)
  })
})

describe('cells', () => {
  test('AA alkaline has the published curve: 3000 mAh at 25 mA, about 2650 at 100, 1125 at 1 A', () => {
    const at = (ma: number) => 3000 * capacityShare('aa-alkaline', ma)
    expect([10, 25, 100, 500, 1000, 2000].map((ma) => Math.round(at(ma)))).toEqual([
      3000, 3000, 2650, 1625, 1125, 1125,
    ])
    expect(at(50)).toBeGreaterThan(2650)
    expect(at(50)).toBeLessThan(3000)
  })

  test('say of each figure whether it is from memory', () => {
    for (const { capacity, others, electrical } of CELL_PRESETS) {
      expect(capacity.text.length).toBeGreaterThan(10)
      expect(others.text.length).toBeGreaterThan(10)
      expect(checkPower({ ...defaultPower(), ...electrical }).ok).toBe(true)
    }
    expect(cellPreset('cr2032').capacity.fromMemory).toBe(false)
    expect(cellPreset('li-po').capacity.fromMemory).toBe(true)
  })

  test('come with cautions: button cells with children, lithium cells with fire', () => {
    expect(cautions({ ...defaultPower(), cell: 'cr2032' }).join(' ')).toContain('16 CFR 1263')
    expect(cautions({ ...defaultPower(), cell: 'li-po' }).join(' ')).toContain('burn')
    expect(cautions(defaultPower()).join(' ')).toContain('data sheet')
  })
})

describe('bad input is refused in words', () => {
  const power = (change: Partial<PowerSetup>) => checkPower({ ...defaultPower(), ...change })
  const led = (change: Partial<LedSetup>, supply: Partial<PowerSetup> = {}) =>
    checkLed({ ...defaultLed(), ...change }, { ...defaultPower(), ...supply }, 48_000_000)

  test('the defaults are sound', () => {
    expect(power({}).ok).toBe(true)
    expect(led({}).ok).toBe(true)
  })

  test('cells of 0 mAh', () => {
    expect(power({ capacityMah: { min: 0, typ: 0, max: 0 } })).toMatchObject({
      code: 'power/capacity',
      message: 'Cells of 0 mAh feed nothing: enter the capacity of one cell.',
    })
  })

  test('PWM of 0 Hz, and one faster than the clock counts', () => {
    expect(led({ pwmHz: 0 })).toMatchObject({ code: 'led/pwm' })
    expect(led({ pwmHz: 4000, pwmBits: 14 })).toMatchObject({
      code: 'led/pwm',
      message: expect.stringContaining('at most 2929 times a second'),
    })
  })

  test('a forward voltage above the supply', () => {
    expect(led({}, { series: 2 })).toMatchObject({
      code: 'led/green',
      message: expect.stringContaining('green needs 3.2 V and the supply gives 3.2 V'),
    })
  })

  test('least above most, voltages out of order, a converter that gives less than the cells', () => {
    expect(power({ sensorMa: { min: 2, typ: 1, max: 3 } })).toMatchObject({ code: 'power/load' })
    expect(power({ endV: 2 })).toMatchObject({ code: 'power/volts' })
    expect(power({ supply: 'boost', boostV: 4.5 })).toMatchObject({ code: 'power/boost' })
    expect(power({ series: 0 })).toMatchObject({ code: 'power/series' })
  })
})
