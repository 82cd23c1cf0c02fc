import { describe, expect, test } from 'vitest'
import { spreadLabels } from '../../../src/ui/record/draw-trace'

describe('labels at the ends of lines', () => {
  test('stay where they are when there is room', () => {
    const labels = [
      { text: 'x', y: 10 },
      { text: 'y', y: 40 },
      { text: 'z', y: 80 },
    ]
    expect(spreadLabels(labels)).toEqual(labels)
  })

  test('never cover one another and stay around their lines', () => {
    const spread = spreadLabels([
      { text: 'x', y: 50 },
      { text: 'y', y: 50 },
      { text: 'z', y: 51 },
    ])
    expect(spread.map(({ text }) => text)).toEqual(['x', 'y', 'z'])
    for (const [index, { y }] of spread.entries()) {
      const above = spread[index - 1]
      if (above !== undefined) expect(y - above.y).toBeGreaterThanOrEqual(11)
    }
    const middle = (spread[0]!.y + spread[2]!.y) / 2
    expect(Math.abs(middle - 50)).toBeLessThan(6)
  })
})
