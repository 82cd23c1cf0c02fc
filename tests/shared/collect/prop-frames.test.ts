import { describe, expect, it } from 'vitest'
import { demonstrate } from '../../../src/shared/collect/demonstration'
import type { Demonstration } from '../../../src/shared/collect/plan'
import {
  between,
  type PropFrame,
  propFrames,
  viewBoxOf,
} from '../../../src/shared/collect/prop-frames'
import { type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../../../src/shared/model/sample'
import { performance } from '../../browser/hand-player'

const PERIOD_MS = 60

function shown(samples: SampleBlock): Demonstration {
  const demonstration = demonstrate(samples, 1, PERIOD_MS)
  if (demonstration === null) throw new Error('Two seconds are enough to show.')
  return demonstration
}

/** A prop that lies level and turns about one of its axes, deg/s, for a second; rests around it. */
function turning(axis: 0 | 1 | 2, rateDps: number): PropFrame[] {
  const count = 120
  const tMs = Float64Array.from({ length: count }, (_, i) => (1000 * i) / 60)
  const values = new Float32Array(count * 6)
  for (let i = 0; i < count; i++) {
    const angle = (Math.PI / 180) * rateDps * Math.min(1, Math.max(0, (i - 30) / 60))
    // What gravity looks like from a prop turned by this angle.
    const gravity = [0, 0, 1]
    if (axis === 0) [gravity[1], gravity[2]] = [Math.sin(angle), Math.cos(angle)]
    if (axis === 1) [gravity[0], gravity[2]] = [-Math.sin(angle), Math.cos(angle)]
    gravity.forEach((share, k) => {
      values[6 * i + k] = share * STANDARD_GRAVITY_MPS2
    })
    values[6 * i + 3 + axis] = i >= 30 && i < 90 ? rateDps : 0
  }
  return propFrames(shown({ tMs, values }))
}

const relativeTip = ({ tip, fist }: PropFrame) => [tip[0] - fist[0], tip[1] - fist[1]] as const

describe('the prop of a demonstration', () => {
  it('lifts its tip when it is tilted up', () => {
    const frames = turning(0, 80)
    const [first, last] = [relativeTip(frames[0]!), relativeTip(frames.at(-1)!)]
    expect(last[1]).toBeLessThan(first[1] - 0.05)
  })

  it('swings its tip to the left when it turns left', () => {
    const frames = turning(2, 60)
    const [first, last] = [relativeTip(frames[0]!), relativeTip(frames.at(-1)!)]
    expect(last[0]).toBeLessThan(first[0] - 0.15)
  })

  it('shows a roll by its mark', () => {
    const frames = turning(1, 90)
    const side = ({ mark, fist }: PropFrame) => mark[0] - fist[0]
    expect(side(frames.at(-1)!)).toBeGreaterThan(side(frames[0]!) + 0.04)
  })

  it('is carried up by a raise and across by a sweep', () => {
    const raise = propFrames(shown(performance('raise', 7, 600)))
    const sweep = propFrames(shown(performance('sweep', 7, 600)))
    const travel = (frames: PropFrame[], axis: 0 | 1) => {
      const at = frames.map(({ fist }) => fist[axis])
      return Math.max(...at) - Math.min(...at)
    }
    expect(travel(raise, 1)).toBeGreaterThan(0.2)
    expect(travel(raise, 0)).toBeLessThan(0.1)
    expect(travel(sweep, 0)).toBeGreaterThan(0.4)
  })

  it('stays where it is when nothing moves', () => {
    const values = new Float32Array(6 * 120).map((_, i) => (i % 6 === 2 ? 9.8 : 0))
    const tMs = Float64Array.from({ length: 120 }, (_, i) => (1000 * i) / 60)
    const frames = propFrames(shown({ tMs, values }))
    expect(frames.length).toBeGreaterThan(0)
    for (const { fist, tip } of frames) {
      expect(Math.hypot(...fist)).toBeLessThan(0.01)
      expect(Math.hypot(tip[0] - frames[0]!.tip[0], tip[1] - frames[0]!.tip[1])).toBeLessThan(0.01)
    }
  })
})

it('goes evenly from one picture to the next', () => {
  const [one, other] = turning(0, 80).slice(8) as [PropFrame, PropFrame]
  expect(between(one, other, 0)).toEqual(one)
  expect(between(one, other, 1).tip[1]).toBeCloseTo(other.tip[1], 12)
  expect(between(one, other, 0.5).tip[0]).toBeCloseTo((one.tip[0] + other.tip[0]) / 2, 12)
})

it('fits every picture into a square field', () => {
  const frames = turning(2, 60)
  const { left, top, side } = viewBoxOf(frames, 0.1)
  for (const { tip, tail } of frames) {
    for (const [x, y] of [tip, tail]) {
      expect(x).toBeGreaterThanOrEqual(left + 0.1 - 1e-9)
      expect(x).toBeLessThanOrEqual(left + side - 0.1 + 1e-9)
      expect(y).toBeGreaterThanOrEqual(top + 0.1 - 1e-9)
      expect(y).toBeLessThanOrEqual(top + side - 0.1 + 1e-9)
    }
  }
})
