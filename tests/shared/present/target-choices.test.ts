import { describe, expect, test } from 'vitest'
import { countsPerDps, countsPerMps2 } from '../../../src/shared/conditioning/counts'
import {
  choicesForY,
  matrixText,
  mountingAxes,
  mountingFrom,
  parseMatrix,
  remount,
  SIGNED_AXES,
} from '../../../src/shared/present/mounting-choice'
import {
  countsAtEnd,
  rangeText,
  reachText,
  unitsPerCount,
  withFamily,
} from '../../../src/shared/present/target-choices'
import { tipInPhone } from '../../../src/shared/target/board'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { MOUNTINGS } from '../../../src/shared/target/mountings'

const plain = (text: string) => text.replaceAll('\u202f', ' ')

describe('mounting choices', () => {
  test('board x and y together reach each of the 24 mountings once', () => {
    const keys = SIGNED_AXES.flatMap((x) => choicesForY(x).map((y) => mountingFrom(x, y).key))
    expect(new Set(keys).size).toBe(24)
    expect(keys).toHaveLength(24)
  })

  test('each mounting is read back as the axes it was chosen by', () => {
    for (const mounting of MOUNTINGS) {
      expect(mountingAxes(mounting.matrix)!.join('')).toBe(mounting.key)
    }
  })

  test('a matrix between the axes is no choice', () => {
    const half = Math.SQRT1_2
    expect(mountingAxes([half, -half, 0, half, half, 0, 0, 0, 1])).toBeNull()
  })

  test('when x takes the axis of y, y gives way to a free one', () => {
    expect(mountingFrom('+y', '+y').key.slice(0, 2)).toBe('+y')
    expect(mountingFrom('+y', '+y').key[3]).not.toBe('y')
  })

  test('turning the board leaves the long axis where it was in the prop', () => {
    const turned = mountingFrom('+y', '-x').matrix
    const target = remount(defaultTarget(), turned)
    expect(target.longAxis).toBe('x')
    expect(tipInPhone(target)).toEqual(tipInPhone(defaultTarget()))
    const back = remount(target, defaultTarget().mounting)
    expect(back).toEqual(defaultTarget())
  })

  test('a matrix is read from rows, commas or brackets, and refused when not nine numbers', () => {
    const text = '[0, 1, 0; −1, 0, 0; 0, 0, 1]'
    expect(parseMatrix(text)).toEqual([0, 1, 0, -1, 0, 0, 0, 0, 1])
    expect(parseMatrix(matrixText([0, 1, 0, -1, 0, 0, 0, 0, 1]))).toEqual(parseMatrix(text))
    expect(parseMatrix('1 0 0 0 1 0 0 0')).toBeNull()
    expect(parseMatrix('1 0 0 0 one 0 0 0 1')).toBeNull()
  })
})

describe('sensor choices', () => {
  test('another family keeps the full scale and brings its own sensitivity', () => {
    const changed = withFamily(defaultTarget(), 'power-of-two')
    expect(changed.accel).toEqual({ fullScale: 8, nanoPerLsb: 244_141 })
    expect(changed.gyro).toEqual({ fullScale: 1000, nanoPerLsb: 30_517_578 })
    expect(changed.rateHz).toBe(50)
  })

  test('a custom sensor keeps every figure', () => {
    const target = defaultTarget()
    expect(withFamily(target, 'custom')).toEqual({ ...target, preset: 'custom' })
  })

  test('a range says what one count is, and how far 16 bits reach where that differs', () => {
    const decimal = { fullScale: 250, nanoPerLsb: 8_750_000 }
    expect(plain(rangeText(decimal, 'deg/s'))).toBe('±250 deg/s: 8.75 mdeg/s a count')
    expect(plain(reachText(decimal, 'deg/s'))).toBe('16 bits reach to ±287 deg/s in this range.')
    const full = { fullScale: 4, nanoPerLsb: 122_070 }
    expect(plain(rangeText(full, 'g'))).toBe('±4 g: 0.1221 mg a count')
    expect(reachText(full, 'g')).toBe('')
  })

  test('values at an end of int16 are counted for the named axes only', () => {
    const counts = Int16Array.of(32_767, -32_768, 32_766, 32_767, 0, 0)
    expect(countsAtEnd(counts, [0, 1, 2])).toBe(2)
    expect(countsAtEnd(counts, [3, 4, 5])).toBe(1)
  })

  test('counts turn back into the units they came from', () => {
    const { mps2, dps } = unitsPerCount(defaultTarget())
    expect(mps2 * countsPerMps2(defaultTarget())).toBeCloseTo(1, 12)
    expect(dps * countsPerDps(defaultTarget())).toBeCloseTo(1, 12)
  })
})
