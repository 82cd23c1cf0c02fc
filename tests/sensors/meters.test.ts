import { describe, expect, it } from 'vitest'
import { MotionMeter } from '../../src/sensors/motion-meter'
import { RateMeter } from '../../src/sensors/rate'
import { toReading } from '../../src/sensors/reading'
import { commonStep, RoundingMeter } from '../../src/sensors/rounding'
import { samplesOf } from './samples'

describe('the rate', () => {
  // Time stamps of sixteen-odd milliseconds with one reading lost; median 17 and mean 18.18 ms.
  const STAMPS = [0, 16, 33, 50, 66, 83, 100, 117, 133, 150, 166, 200]

  it('is that of the median interval, which a lost reading does not change', () => {
    const meter = new RateMeter()
    for (const tMs of STAMPS) meter.add(tMs)
    expect(meter.rateHz()).toBeCloseTo(58.8235, 4)
  })

  it('is 0 until ten intervals are in', () => {
    const meter = new RateMeter()
    for (const tMs of STAMPS.slice(0, 10)) meter.add(tMs)
    expect(meter.rateHz()).toBe(0)
  })

  it('follows a change within some seconds', () => {
    const meter = new RateMeter()
    for (let i = 0; i < 600; i++) meter.add(i * 10)
    for (let i = 1; i <= 241; i++) meter.add(6000 + i * 20)
    expect(meter.rateHz()).toBe(50)
  })
})

describe('the rounding step', () => {
  const tenths = Array.from({ length: 20 }, (_, i) => Math.round(37 * Math.sin(i)) / 10)

  it('is found in values as browsers round them, in single precision as well', () => {
    expect(commonStep(tenths)).toBe(0.1)
    expect(commonStep(tenths.map(Math.fround))).toBe(0.1)
  })

  it('is the coarsest that fits, also when values sit on fifths only', () => {
    expect(commonStep([0.2, 0.6, -1.4, 9.8])).toBe(0.2)
    expect(commonStep([0.25, 9.81])).toBe(0.01)
  })

  it('is 0 for values off every grid, such as counts of a sensor times its sensitivity', () => {
    expect(commonStep([1, 2, 3, 7, 11].map((count) => (count * 9.80665) / 2048))).toBe(0)
  })

  it('is not claimed from a phone that shows the same few values', () => {
    const meter = new RoundingMeter()
    for (let i = 0; i < 200; i++) meter.add(i % 7)
    expect(meter.step()).toBe(0)
    for (const value of tenths) meter.add(value)
    expect(meter.step()).toBe(0.1)
  })

  it('is given up when finer values come', () => {
    const meter = new RoundingMeter()
    for (const value of tenths) meter.add(value)
    meter.add(0.123456)
    expect(meter.step()).toBe(0)
  })
})

describe('a reading', () => {
  const accelerationIncludingGravity = { x: 1, y: 2, z: 9.8 }

  it('maps alpha, beta and gamma to x, y and z and keeps the time of the event', () => {
    const rotationRate = { alpha: 10, beta: 20, gamma: 30 }
    expect(toReading({ timeStamp: 5.5, accelerationIncludingGravity, rotationRate })).toEqual({
      sample: { tMs: 5.5, ax: 1, ay: 2, az: 9.8, gx: 10, gy: 20, gz: 30 },
      hasGyro: true,
    })
  })

  it('without rotation is a reading without gyroscope, with zero rates', () => {
    const reading = toReading({ timeStamp: 0, accelerationIncludingGravity, rotationRate: null })
    expect(reading).toMatchObject({ hasGyro: false, sample: { gx: 0, gy: 0, gz: 0 } })
  })

  it('with null fields is none', () => {
    const nulls = { x: null, y: null, z: null }
    expect(toReading({ timeStamp: 0, accelerationIncludingGravity: nulls })).toBeNull()
    expect(toReading({ timeStamp: 0, accelerationIncludingGravity: null })).toBeNull()
    expect(toReading({ timeStamp: 0 })).toBeNull()
  })
})

describe('the facts of a source', () => {
  it('are measured apart for accelerometer and gyroscope', () => {
    const meter = new MotionMeter()
    for (const sample of samplesOf(60, (i) => [i / 10, 0, 9.8, Math.sin(i), 0, 0])) {
      meter.add({ sample, hasGyro: true })
    }
    const facts = meter.facts()
    expect(facts).toMatchObject({ hasGyro: true, accelStepMps2: 0.1, gyroStepDps: 0 })
    expect(facts.rateHz).toBeCloseTo(60, 9)
  })
})
