import { describe, expect, it } from 'vitest'
import { type HandReading, SimulatedHand } from '../../../src/shared/demo/simulated-hand'
import { PLAIN_STYLE } from '../../../src/shared/demo/tester-style'
import { STANDARD_GRAVITY_MPS2 } from '../../../src/shared/model/sample'

const STEP_MS = 1000 / 60

/** Readings over a time, 60 a second. */
function run(hand: SimulatedHand, fromMs: number, untilMs: number): HandReading[] {
  const readings: HandReading[] = []
  for (let tMs = fromMs; tMs < untilMs; tMs += STEP_MS) readings.push(hand.sampleAt(tMs))
  return readings
}

const force = ({ ax, ay, az }: HandReading) => Math.hypot(ax, ay, az)
const turning = ({ gx, gy, gz }: HandReading) => Math.hypot(gx, gy, gz)
const peakTurning = (readings: HandReading[]) => Math.max(...readings.map(turning))

describe('simulated hand', () => {
  it('at rest reads one g and no turning when it is ideal', () => {
    for (const reading of run(new SimulatedHand(1, { ideal: true }), 5000, 7000)) {
      expect(force(reading)).toBeCloseTo(STANDARD_GRAVITY_MPS2, 10)
      expect(turning(reading)).toBe(0)
    }
  })

  it('at rest trembles a little around the held pose, rounded as browsers do', () => {
    const readings = run(new SimulatedHand(2), 0, 4000)
    expect(new Set(readings.map(({ gx }) => gx)).size).toBeGreaterThan(3)
    expect(peakTurning(readings)).toBeLessThan(15)
    for (const { ax, gy } of readings) {
      expect(Math.round(ax * 10) / 10).toBe(ax)
      expect(Math.round(gy * 10) / 10).toBe(gy)
    }
  })

  it('starts a movement at the last reading and is busy until it is over', () => {
    const hand = new SimulatedHand(3)
    run(hand, 100, 1100)
    expect(hand.busy(1100)).toBe(false)
    hand.perform('twist')
    expect(hand.busy(1150)).toBe(true)
    expect(peakTurning(run(hand, 1100, 3100))).toBeGreaterThan(200)
    expect(hand.busy(3100)).toBe(false)
    expect(peakTurning(run(hand, 3100, 4100))).toBeLessThan(15)
  })

  it('performs one movement after the other, with a rest between them', () => {
    const hand = new SimulatedHand(4, { style: PLAIN_STYLE, ideal: true })
    run(hand, 0, 100)
    hand.perform('ring')
    hand.perform('ring')
    const moving = run(hand, 100, 4600).map((reading) => turning(reading) > 5)
    const starts = moving.filter((now, index) => {
      const quietBefore = moving.slice(Math.max(0, index - 30), index).every((was) => !was)
      return now && quietBefore
    })
    expect(starts).toHaveLength(2)
  })

  it('performs a movement differently each time, and the same again for the same seed', () => {
    const twice = (seed: number) => {
      const hand = new SimulatedHand(seed)
      run(hand, 0, 100)
      hand.perform('bow')
      const first = run(hand, 100, 3100)
      hand.perform('bow')
      return [first, run(hand, 3100, 6100)]
    }
    const [first, second] = twice(5)
    expect(peakTurning(first)).not.toBe(peakTurning(second))
    expect(twice(5)).toEqual([first, second])
  })

  it('refuses a movement that it does not know', () => {
    expect(() => new SimulatedHand(1).perform('somersault')).toThrow(/somersault/)
  })

  it('rolled in the grip by 50° feels gravity rolled by 50° and turns with the same speed', () => {
    const [plain, rolled] = [0, 50].map(
      (gripRollDeg) => new SimulatedHand(6, { style: PLAIN_STYLE, gripRollDeg, ideal: true }),
    )
    const angle = (50 * Math.PI) / 180
    const check = (tMs: number) => {
      const [a, b] = [plain.sampleAt(tMs), rolled.sampleAt(tMs)]
      // The lever turns with the prop, so only rates are the same but for the roll.
      expect(b.gy).toBeCloseTo(a.gy, 9)
      expect(b.gx).toBeCloseTo(Math.cos(angle) * a.gx - Math.sin(angle) * a.gz, 9)
      return [a, b]
    }
    const [a, b] = check(0)
    expect(b.ax).toBeCloseTo(-Math.sin(angle) * a.az, 9)
    expect(b.az).toBeCloseTo(Math.cos(angle) * a.az, 9)
    for (const hand of [plain, rolled]) hand.perform('sweep')
    for (let tMs = 10; tMs < 2000; tMs += 10) check(tMs)
  })

  it('can be gripped anew while it runs', () => {
    const hand = new SimulatedHand(7, { style: PLAIN_STYLE, ideal: true })
    const before = hand.sampleAt(0)
    hand.setGrip({ rollDeg: 90 })
    expect(hand.sampleAt(10).ax).toBeCloseTo(-before.az, 9)
  })
})

describe('dragging', () => {
  const drag = (hand: SimulatedHand, dx: number, dy: number) => {
    const readings: HandReading[] = []
    for (let tMs = 0; tMs < 400; tMs += STEP_MS) {
      hand.drag(dx / 24, dy / 24, STEP_MS)
      readings.push(hand.sampleAt(tMs))
    }
    return readings
  }

  it('to the right turns the lantern to the right, upwards tips it up', () => {
    const make = () => new SimulatedHand(8, { style: PLAIN_STYLE, ideal: true })
    const right = drag(make(), 300, 0)
    expect(Math.min(...right.map(({ gz }) => gz))).toBeLessThan(-80)
    const up = drag(make(), 0, -300)
    expect(Math.max(...up.map(({ gx }) => gx))).toBeGreaterThan(80)
    expect(Math.max(...up.map(force))).toBeGreaterThan(STANDARD_GRAVITY_MPS2 + 2)
  })

  it('turns by the travel of the pointer, however it is cut into events', () => {
    const travelled = (events: number) => {
      const hand = new SimulatedHand(9, { style: PLAIN_STYLE, ideal: true })
      hand.sampleAt(0)
      for (let i = 0; i < events; i++) {
        hand.drag(200 / events, 0, 200 / events)
        hand.stateAt(((i + 1) * 200) / events)
      }
      return hand.stateAt(500).yaw.value
    }
    expect(travelled(20)).toBeLessThan(-0.8)
    expect(travelled(20) / travelled(5)).toBeCloseTo(1, 1)
  })

  it('let go sinks back without a movement of its own', () => {
    const hand = new SimulatedHand(10, { style: PLAIN_STYLE, ideal: true })
    drag(hand, 300, -100)
    run(hand, 400, 1000)
    expect(peakTurning(run(hand, 1000, 15_000))).toBeLessThan(30)
    expect(Math.abs(hand.stateAt(40_000).yaw.value)).toBeLessThan(0.01)
  })

  it('has moderate accelerations even for a flick of 1500 px/s', () => {
    const readings = drag(new SimulatedHand(11, { style: PLAIN_STYLE, ideal: true }), 600, 0)
    expect(Math.max(...readings.map(force))).toBeLessThan(70)
  })
})
