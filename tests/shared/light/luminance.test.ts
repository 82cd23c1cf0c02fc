import { describe, expect, test } from 'vitest'
import {
  chromaticity,
  encodedOf,
  isSaturatedRed,
  type LinearRgb,
  linearOf,
  redAmount,
  redShare,
  relativeLuminance,
  uvDistance,
} from '../../../src/shared/light/luminance'
import { coneSr, discSr, SMALL_AREA_SR } from '../../../src/shared/light/solid-angle'

const linear = (...rgb: number[]) => rgb.map((c) => linearOf(c / 255)) as unknown as LinearRgb

/**
 * Relative luminance and saturated red: W3C, "general flash and red flash thresholds" (WCAG 2.2), and
 * values worked out from it.
 */
describe('colours of WCAG 2.3.1', () => {
  test('have the relative luminance of their definition', () => {
    expect(relativeLuminance(linear(255, 0, 0))).toBeCloseTo(0.2126, 10)
    expect(relativeLuminance(linear(0, 255, 0))).toBeCloseTo(0.7152, 10)
    expect(relativeLuminance(linear(0, 0, 255))).toBeCloseTo(0.0722, 10)
    expect(relativeLuminance(linear(255, 255, 0))).toBeCloseTo(0.9278, 10)
    expect(relativeLuminance(linear(255, 128, 0))).toBeCloseTo(0.366983, 6)
    expect(relativeLuminance(linear(128, 0, 0))).toBeCloseTo(0.045892, 6)
    expect(relativeLuminance(linear(128, 128, 128))).toBeCloseTo(0.215861, 6)
  })

  test('the first grey of a tenth is 90 and the first of 0.8 is 232', () => {
    const greys = Array.from({ length: 256 }, (_, c) => relativeLuminance(linear(c, c, c)))
    expect(greys.findIndex((l) => l >= 0.1)).toBe(90)
    expect(greys.findIndex((l) => l >= 0.8)).toBe(232)
  })

  test('both printed knees of sRGB give the same for every 8-bit value', () => {
    const printed = (c: number) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
    for (let c = 0; c < 256; c++) {
      expect(linearOf(c / 255)).toBe(printed(c / 255))
      expect(encodedOf(linearOf(c / 255)) * 255).toBeCloseTo(c, 4)
    }
  })

  test('orange is a saturated red, which sRGB values without linear light would miss', () => {
    const orange = linear(255, 128, 0)
    expect(redShare(orange)).toBeCloseTo(0.8225, 4)
    expect(255 / (255 + 128)).toBeLessThan(0.8)
    expect(isSaturatedRed(orange)).toBe(true)
    expect(redAmount(orange)).toBeCloseTo(250.9, 1)
    expect(redAmount(linear(128, 0, 0))).toBeCloseTo(69.1, 1)
  })

  test('yellow, magenta and white are not', () => {
    for (const colour of [linear(255, 255, 0), linear(255, 0, 255), linear(255, 255, 255)]) {
      expect(isSaturatedRed(colour)).toBe(false)
      expect(redAmount(colour)).toBe(0)
    }
  })

  test.each([
    ['red', [255, 0, 0], 0.4508, 0.5229],
    ['green', [0, 255, 0], 0.125, 0.5625],
    ['blue', [0, 0, 255], 0.1755, 0.1579],
    ['white', [255, 255, 255], 0.1978, 0.4683],
    ['orange', [255, 128, 0], 0.3195, 0.5389],
  ])('%s has its place in CIE 1976 UCS', (_, rgb, u, v) => {
    const [atU, atV] = chromaticity(linear(...rgb))
    expect(atU).toBeCloseTo(u, 3)
    expect(atV).toBeCloseTo(v, 3)
  })

  test.each([
    ['white', [255, 255, 255], 0.2588],
    ['yellow', [255, 255, 0], 0.2487],
    ['magenta', [255, 0, 255], 0.242],
    ['orange', [255, 128, 0], 0.1323],
    ['blue', [0, 0, 255], 0.4572],
    ['green', [0, 255, 0], 0.3282],
    ['cyan', [0, 255, 255], 0.3197],
  ])('%s is as far from red as worked out', (_, rgb, distance) => {
    const red = chromaticity(linear(255, 0, 0))
    expect(uvDistance(red, chromaticity(linear(...rgb)))).toBeCloseTo(distance, 3)
  })
})

test('a quarter of the 10 degree field is 0.006 sr, and props are seen under these angles', () => {
  expect(coneSr(10)).toBeCloseTo(0.023909, 6)
  expect(coneSr(10) / 4).toBeCloseTo(0.005977, 6)
  expect(discSr(0.005, 1)).toBeCloseTo(1.96e-5, 7)
  expect(discSr(0.04, 0.5)).toBeCloseTo(0.00503, 5)
  expect(discSr(0.04, 0.3)).toBeCloseTo(0.01396, 5)
  expect(discSr(0.1, 0.5)).toBeCloseTo(0.0314, 4)
  expect(discSr(0.04, 0.5)).toBeLessThan(SMALL_AREA_SR)
  expect(discSr(0.04, 0.3)).toBeGreaterThan(SMALL_AREA_SR)
})
