import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { focusAfter, rowsWanted, runsOf } from '../../../src/ui/common/rows'

const list = fc.record({
  top: fc.integer({ min: -600_000, max: 3_000 }),
  windowPx: fc.integer({ min: 200, max: 2_000 }),
  rowPx: fc.integer({ min: 20, max: 120 }),
  count: fc.integer({ min: 0, max: 10_000 }),
})

describe('rows of a long list', () => {
  it('in the page cover the window wherever it has scrolled to, and are few', () => {
    fc.assert(
      fc.property(list, ({ top, windowPx, rowPx, count }) => {
        const { first, last } = rowsWanted(top, windowPx, rowPx, count)
        const inWindow = (row: number) =>
          top + (row + 1) * rowPx > 0 && top + row * rowPx < windowPx && row >= 0 && row < count
        for (const row of [Math.ceil(-top / rowPx), Math.floor((windowPx - top) / rowPx) - 1]) {
          if (inWindow(row)) expect(row >= first && row < last).toBe(true)
        }
        expect(last - first).toBeLessThanOrEqual((3 * windowPx) / rowPx + 18)
        if (count > 0) expect(last).toBeGreaterThanOrEqual(first)
      }),
    )
  })

  it('and gaps together are the whole list in order, each row once', () => {
    const input = fc.record({
      first: fc.nat(200),
      more: fc.nat(60),
      always: fc.array(fc.nat(250), { maxLength: 3 }),
      count: fc.nat(300),
    })
    fc.assert(
      fc.property(input, ({ first, more, always, count }) => {
        const rows = { first: Math.min(first, count), last: Math.min(first + more, count) }
        const stay = always.filter((at) => at < count)
        let at = 0
        const present = new Set<number>()
        for (const run of runsOf(rows, stay, count)) {
          expect(run.from).toBe(at)
          if ('gap' in run) {
            expect(run.gap).toBeGreaterThan(0)
            at += run.gap
            continue
          }
          for (; at < run.to; at++) present.add(at)
        }
        expect(at).toBe(count)
        for (const row of stay) expect(present.has(row)).toBe(true)
        for (let row = rows.first; row < rows.last; row++) expect(present.has(row)).toBe(true)
      }),
    )
  })

  it('are walked by arrow keys, Home and End, and nothing lies beyond the ends', () => {
    expect(focusAfter('ArrowDown', 3, 10)).toBe(4)
    expect(focusAfter('ArrowUp', 3, 10)).toBe(2)
    expect(focusAfter('End', 3, 10_000)).toBe(9_999)
    expect(focusAfter('Home', 3, 10)).toBe(0)
    expect(focusAfter('ArrowDown', 9, 10)).toBeNull()
    expect(focusAfter('ArrowUp', 0, 10)).toBeNull()
    expect(focusAfter('x', 3, 10)).toBeNull()
    expect(focusAfter('Home', null, 10)).toBeNull()
  })
})
