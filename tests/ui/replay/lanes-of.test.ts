import { describe, expect, test } from 'vitest'
import type { Replay } from '../../../src/shared/model/replay'
import { STANDARD_GRAVITY_MPS2 } from '../../../src/shared/model/sample'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { lanesOf } from '../../../src/ui/replay/lanes-of'

/** Flat and still, then turning at 350 deg/s: 1 g is 1 / 0.244e-3 counts, 350 deg/s is 10 000. */
const replay: Replay = {
  rateHz: 52,
  recordedCount: 2,
  counts: Int16Array.of(0, 0, 4098, 0, 0, 0, 0, 0, 4098, 0, -10_000, 0),
  energy: Uint32Array.of(20, 4000),
  phase: Uint8Array.of(0, 1),
  onThreshold: 730,
  offThreshold: 219,
  events: [],
  gestureDistances: [],
  queries: [],
}

describe('lanes of a replay', () => {
  const lanes = lanesOf(replay, defaultTarget())

  test('six traces follow the energy, in units and not in counts', () => {
    expect(lanes.map((lane) => `${lane.name} ${lane.unit}`.trim())).toEqual([
      'motion energy',
      'ax m/s²',
      'ay m/s²',
      'az m/s²',
      'gx deg/s',
      'gy deg/s',
      'gz deg/s',
    ])
    expect(lanes[3].at(0)).toBeCloseTo(STANDARD_GRAVITY_MPS2, 2)
    expect(lanes[5].at(1)).toBeCloseTo(-350)
  })

  test('the axes of one sensor share a scale that holds every value', () => {
    const [ax, az] = [lanes[1], lanes[3]]
    expect(ax.reach).toBe(az.reach)
    expect(az.yOf(az.at(0), 44)).toBeGreaterThanOrEqual(0)
    expect(lanes[5].yOf(-350, 44)).toBeLessThanOrEqual(44)
  })

  test('both thresholds are drawn in the energy, the start above the end', () => {
    const [energy] = lanes
    expect(energy.levels.map((level) => level.value)).toEqual([730, 219])
    expect(energy.yOf(730, 92)).toBeLessThan(energy.yOf(219, 92))
  })
})

describe('another replay beside', () => {
  const louder: Replay = { ...replay, counts: replay.counts.map((count) => count * 2) }
  const lanes = lanesOf(replay, defaultTarget(), { replay: louder, shift: 1 })

  test('is laid where it is shifted to, and both fit the scale', () => {
    expect(lanes[5].ghost).toMatchObject({ from: 1, to: 3 })
    expect(lanes[5].ghost?.at(2)).toBeCloseTo(-700)
    expect(lanes[5].yOf(-700, 44)).toBeLessThanOrEqual(44)
    expect(lanes[3].ghost?.at(1)).toBeCloseTo(2 * STANDARD_GRAVITY_MPS2, 1)
  })
})
