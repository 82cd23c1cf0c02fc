import { describe, expect, it } from 'vitest'
import { MovementWatch, type WatchState } from '../../src/recording/movement-watch'
import { movementHasGap } from '../../src/recording/quality'
import { AXES, type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../../src/shared/model/sample'
import { performance, stillness } from '../browser/hand-player'

/** A level phone that turns at times, deg/s at t ms; 60 Hz. */
function watched(turnDps: (tMs: number) => number, lengthMs: number) {
  const watch = new MovementWatch()
  const states: { tMs: number; state: WatchState }[] = []
  for (let tMs = 0; tMs <= lengthMs; tMs += 1000 / 60) {
    const sample = {
      tMs,
      ax: 0,
      ay: 0,
      az: STANDARD_GRAVITY_MPS2,
      gx: turnDps(tMs),
      gy: 0,
      gz: 0,
    }
    states.push({ tMs, state: watch.add(sample) })
  }
  return (state: WatchState) => states.find((one) => one.state === state)?.tMs
}

describe('watching for the end of a movement', () => {
  it('calls it over after 600 ms of rest', () => {
    const first = watched((tMs) => (tMs > 500 && tMs < 1500 ? 90 : 0), 4000)
    expect(first('moving')).toBeCloseTo(500, -2)
    expect(first('over')).toBeCloseTo(2100, -2)
  })

  it('takes two knocks with a rest of half a second between for one movement', () => {
    const knocks = (tMs: number) =>
      (tMs > 500 && tMs < 800) || (tMs > 1300 && tMs < 1600) ? 90 : 0
    expect(watched(knocks, 4000)('over')).toBeCloseTo(2200, -2)
  })

  it('gives up after five seconds in which nothing moved', () => {
    const first = watched(() => 0, 6000)
    expect(first('moving')).toBe(undefined)
    expect(first('over')).toBeCloseTo(5000, -2)
  })

  it('cuts off a hand that never rests after eight seconds', () => {
    const first = watched((tMs) => (tMs > 1000 ? 60 : 0), 12_000)
    expect(first('over')).toBeCloseTo(9000, -2)
  })

  it('sees begin and end of every movement of the physical model', () => {
    for (const movement of ['raise', 'ring', 'sweep', 'pour', 'knock', 'twist']) {
      const watch = new MovementWatch()
      const blocks = [performance(movement, 3, 600), stillness(1200, 3)]
      let offsetMs = 0
      let state: WatchState = 'waiting'
      let began = false
      for (const { tMs, values } of blocks) {
        for (const [i, t] of tMs.entries()) {
          const [ax = 0, ay = 0, az = 0, gx = 0, gy = 0, gz = 0] = values.subarray(i * AXES)
          state = watch.add({ tMs: offsetMs + t, ax, ay, az, gx, gy, gz })
          began ||= state === 'moving'
        }
        offsetMs += (tMs.at(-1) ?? 0) + 1000 / 60
      }
      expect({ movement, began, state }).toEqual({ movement, began: true, state: 'over' })
    }
  })
})

describe('a hole in the readings', () => {
  /** Turns from 1 to 2 s; without the readings between two times. */
  function block(fromMs: number, toMs: number): SampleBlock {
    const times = Array.from({ length: 240 }, (_, i) => (i * 1000) / 60).filter(
      (tMs) => tMs <= fromMs || tMs >= toMs,
    )
    const values = new Float32Array(times.length * AXES)
    times.forEach((tMs, i) => {
      values[i * AXES + 2] = STANDARD_GRAVITY_MPS2
      if (tMs >= 1000 && tMs <= 2000) values[i * AXES + 3] = 120
    })
    return { tMs: Float64Array.from(times), values }
  }

  it('counts when it lies in the movement, and not when in the rest around it', () => {
    expect(movementHasGap(block(1300, 1600))).toBe(true)
    expect(movementHasGap(block(200, 600))).toBe(false)
    expect(movementHasGap(block(2500, 3000))).toBe(false)
    expect(movementHasGap(block(5000, 5000))).toBe(false)
  })
})
