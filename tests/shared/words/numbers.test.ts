import { describe, expect, test } from 'vitest'
import {
  byteText,
  durationText,
  groupDigits,
  percent,
  percentRange,
  plural,
  shortNumber,
} from '../../../src/shared/words/en/numbers'

const plain = (text: string) => text.replaceAll('\u202f', ' ')

describe('numbers for people', () => {
  test('digits are grouped from five on (ISO 80000-1)', () => {
    expect(plain(groupDigits(1240))).toBe('1240')
    expect(plain(groupDigits(12_400))).toBe('12 400')
    expect(plain(groupDigits(-1_234_567))).toBe('-1 234 567')
  })

  test('a percentage is exact only at its ends', () => {
    expect(plain(percent(1))).toBe('100 %')
    expect(plain(percent(1999 / 2000))).toBe('99.9 %')
    expect(plain(percent(1 / 10_000))).toBe('0.1 %')
    expect(plain(percent(0.954))).toBe('95.4 %')
    expect(percent(Number.NaN)).toBe('no data')
  })

  test('an interval names its unit once', () => {
    expect(plain(percentRange(0.931, 0.98))).toBe('93.1 to 98 %')
  })

  test('bytes, durations and counts carry their unit', () => {
    expect(plain(byteText(4096))).toBe('4096 B')
    expect(plain(byteText(65_536))).toBe('64.0 KiB')
    expect(plain(durationText(450))).toBe('450 ms')
    expect(plain(durationText(12_340))).toBe('12.3 s')
    expect(plain(durationText(600_000))).toBe('10.0 min')
    expect(plural('take', 1)).toBe('1 take')
    expect(plural('take', 0)).toBe('0 takes')
  })

  test('a short number keeps two or three digits that matter', () => {
    expect(shortNumber(0.0612)).toBe('0.061')
    expect(shortNumber(12.34)).toBe('12.3')
    expect(shortNumber(0)).toBe('0')
    expect(shortNumber(Number.POSITIVE_INFINITY)).toBe('not known')
  })
})
