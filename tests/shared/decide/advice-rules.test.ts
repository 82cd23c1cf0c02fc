import { describe, expect, test } from 'vitest'
import { adviceFor } from '../../../src/shared/decide/advice'
import type { PairReport } from '../../../src/shared/decide/gesture-decision'
import { wilson } from '../../../src/shared/statistics/wilson'

type Pair = Omit<PairReport, 'advice'>

const margin = (value: number) => ({ value, low: value, high: value, n: 96 })

/** Well apart in every way. */
const apart: Pair = {
  first: 0,
  second: 1,
  told: {
    recogniser: wilson(96, 96),
    shape: wilson(96, 96),
    accelerometer: wilson(95, 96),
    unaligned: wilson(96, 96),
  },
  margin: margin(1.2),
  courseMargin: margin(1.1),
  turningDps: 40,
  byDuration: wilson(94, 96),
  bySize: wilson(90, 96),
  byTurn: wilson(60, 96),
  pieces: null,
}

describe('advice on a pair', () => {
  test('is none for two that are well apart, whatever their durations', () => {
    expect(adviceFor(apart)).toBeNull()
  })

  test('on speed needs a course of rotation that is the same', () => {
    const same = { ...apart, courseMargin: margin(0.1) }
    expect(adviceFor(same)).toBe('speed')
    expect(adviceFor({ ...same, turningDps: 2 })).toBeNull()
    expect(adviceFor({ ...same, courseMargin: margin(Number.NaN) })).toBeNull()
  })

  test('on size needs more turning in the same time', () => {
    const same = { ...apart, courseMargin: margin(0.1), byTurn: wilson(94, 96) }
    const larger = { ...same, byDuration: wilson(50, 96) }
    expect(adviceFor(larger)).toBe('size')
    // Further and longer is another movement.
    expect(adviceFor(same)).toBeNull()
  })

  test('on pieces comes first, and needs several takes', () => {
    const of = (hits: number) => ({ whole: 1, part: 0, rate: wilson(hits, 24) })
    expect(adviceFor({ ...apart, pieces: of(3) })).toBe('part')
    expect(adviceFor({ ...apart, pieces: of(2) })).toBeNull()
  })

  test('on the gyroscope needs intervals that do not touch', () => {
    const without = (hits: number) => ({
      ...apart,
      told: { ...apart.told, accelerometer: wilson(hits, 96) },
    })
    expect(adviceFor(without(60))).toBe('gyro')
    expect(adviceFor(without(88))).toBeNull()
  })

  test('on alignment needs two that are as near as one with it, and apart without', () => {
    const lost = {
      ...apart,
      told: { ...apart.told, recogniser: wilson(60, 96) },
      margin: margin(0.05),
      byDuration: wilson(50, 96),
      bySize: wilson(50, 96),
    }
    expect(adviceFor(lost)).toBe('roll')
    const never = { ...lost, told: { ...lost.told, unaligned: wilson(62, 96) } }
    expect(adviceFor(never)).toBe('alike')
  })
})
