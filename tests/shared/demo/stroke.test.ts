import { describe, expect, it } from 'vitest'
import { minimumJerk, type Stroke, shifted, strokeAt } from '../../../src/shared/demo/stroke'

const step: Stroke = { kind: 'step', axis: 'z', startS: 0.2, durationS: 0.6, amount: -0.4 }
const wave: Stroke = {
  kind: 'wave',
  axis: 'yaw',
  startS: 0.1,
  durationS: 1.3,
  amount: 0.5,
  frequencyHz: 2.7,
  phase: 0.4,
  fade: 0.3,
}

describe('strokes', () => {
  it('have the rates and accelerations that central differences of their values give', () => {
    const h = 1e-5
    for (const stroke of [step, wave]) {
      for (let timeS = 0.0013; timeS < 1.6; timeS += 0.0117) {
        const [before, here, after] = [timeS - h, timeS, timeS + h].map((t) => strokeAt(stroke, t))
        expect(here.rate).toBeCloseTo((after.value - before.value) / (2 * h), 6)
        expect(here.accel).toBeCloseTo((after.rate - before.rate) / (2 * h), 5)
      }
    }
  })

  it('start and end without a jump of value, rate or acceleration', () => {
    for (const stroke of [step, wave]) {
      for (const at of [stroke.startS, stroke.startS + stroke.durationS]) {
        const [inside, outside] = [1e-9, -1e-9].map((d) => strokeAt(stroke, at + d))
        expect(Math.abs(inside.value - outside.value)).toBeLessThan(1e-6)
        expect(Math.abs(inside.rate - outside.rate)).toBeLessThan(1e-6)
        expect(Math.abs(inside.accel - outside.accel)).toBeLessThan(1e-3)
      }
    }
  })

  it('of minimum jerk peak at 15/8 of the mean rate and 10/√3 of amount over duration squared', () => {
    // The extremes of the polynomial of Flash and Hogan 1985, at u = 1/2 and (3 - √3)/6.
    expect(minimumJerk(0.5, 1).rate).toBeCloseTo(15 / 8, 12)
    expect(minimumJerk((3 - Math.sqrt(3)) / 6, 1).accel).toBeCloseTo(10 / Math.sqrt(3), 12)
    expect(minimumJerk(2, 1)).toEqual({ value: 1, rate: 0, accel: 0 })
  })

  it('leave behind their amount when they are steps and nothing when they are waves', () => {
    expect(strokeAt(step, 9).value).toBe(-0.4)
    expect(strokeAt(wave, 9).value).toBe(0)
  })

  it('keep their course when they are shifted', () => {
    const [later] = shifted([wave], 2)
    expect(strokeAt(later, 2.5).value).toBeCloseTo(strokeAt(wave, 0.5).value, 12)
  })
})
