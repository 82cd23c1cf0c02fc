import { expect, it } from 'vitest'
import { demonstrate } from '../../../src/shared/collect/demonstration'
import type { Demonstration } from '../../../src/shared/collect/plan'
import { between, propFrames } from '../../../src/shared/collect/prop-frames'
import { STANDARD_GRAVITY_MPS2 } from '../../../src/shared/model/sample'

const PERIOD_MS = 50

/** A prop that lies level and turns about one of its axes, deg/s, for a second; then rests. */
function turning(axis: 0 | 1 | 2, rateDps: number): Demonstration {
  const count = 120
  const tMs = Float64Array.from({ length: count }, (_, i) => (1000 * i) / 60)
  const values = new Float32Array(count * 6)
  for (let i = 0; i < count; i++) {
    const moves = i >= 30 && i < 90
    const angle = (Math.PI / 180) * rateDps * Math.min(1, Math.max(0, (i - 30) / 60))
    // What gravity looks like from a prop turned by this angle.
    const gravity = [0, 0, 1]
    if (axis === 0) [gravity[1], gravity[2]] = [Math.sin(angle), Math.cos(angle)]
    if (axis === 1) [gravity[0], gravity[2]] = [-Math.sin(angle), Math.cos(angle)]
    gravity.forEach((share, k) => {
      values[6 * i + k] = share * STANDARD_GRAVITY_MPS2
    })
    values[6 * i + 3 + axis] = moves ? rateDps : 0
  }
  const shown = demonstrate({ tMs, values }, 1, PERIOD_MS)
  if (shown === null) throw new Error('Two seconds are enough to show.')
  return shown
}

const ends = (demonstration: Demonstration) => {
  const frames = propFrames(demonstration)
  return { first: frames[0]!, last: frames.at(-1)! }
}

it('raises the tip on the screen when the prop is tilted up, and leaves the hand where it is', () => {
  const { first, last } = ends(turning(0, 80))
  expect(last.tip[1]).toBeLessThan(first.tip[1] - 0.15)
  for (const frame of [first, last]) {
    // The hand is at 0, 0: handle and tip are on one line through it.
    expect(frame.tip[0] * frame.tail[1] - frame.tip[1] * frame.tail[0]).toBeCloseTo(0, 6)
  }
})

it('swings the tip to the left when the prop turns left, whichever way it was heading', () => {
  const { first, last } = ends(turning(2, 60))
  expect(last.tip[0]).toBeLessThan(first.tip[0] - 0.4)
})

it('shows a roll by the mark alone', () => {
  const { first, last } = ends(turning(1, 90))
  expect(Math.hypot(last.tip[0] - first.tip[0], last.tip[1] - first.tip[1])).toBeLessThan(0.1)
  expect(last.mark[0]).toBeGreaterThan(first.mark[0] + 0.1)
})

it('goes evenly from one picture to the next', () => {
  const [one, other] = propFrames(turning(0, 80)).slice(20) as never as [
    ReturnType<typeof propFrames>[0],
    ReturnType<typeof propFrames>[0],
  ]
  expect(between(one, other, 0)).toEqual(one)
  expect(between(one, other, 1).tip[1]).toBeCloseTo(other.tip[1], 12)
  expect(between(one, other, 0.5).tip[0]).toBeCloseTo((one.tip[0] + other.tip[0]) / 2, 12)
})
