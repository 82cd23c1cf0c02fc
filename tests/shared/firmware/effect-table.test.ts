import { expect, test } from 'vitest'
import { gestureColour } from '../../../src/shared/firmware/effect-table'

test('colours differ, and their channels never add up to more than one at full', () => {
  for (const count of [1, 2, 3, 8, 64]) {
    const colours = Array.from({ length: count }, (_, gesture) => gestureColour(gesture, count))
    for (const [red, green, blue] of colours) {
      expect(red + green + blue).toBeGreaterThanOrEqual(250)
      expect(red + green + blue).toBeLessThanOrEqual(255)
    }
    expect(new Set(colours.map(String)).size).toBe(count)
  }
})
