import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { MotionSample } from '../../src/sensors/motion-source'
import { createSimulatedSource, type SimulatedSource } from '../../src/sensors/simulated-source'
import { STANDARD_GRAVITY_MPS2 } from '../../src/shared/model/sample'

let source: SimulatedSource
let samples: MotionSample[]

beforeEach(async () => {
  vi.useFakeTimers()
  source = createSimulatedSource(7)
  samples = []
  source.subscribe((sample) => samples.push(sample))
  await source.start()
})

afterEach(() => {
  source.stop()
  vi.useRealTimers()
})

const run = async (durationMs: number) => {
  samples = []
  await vi.advanceTimersByTimeAsync(durationMs)
  return samples
}

/** Largest angular rate among samples, deg/s. */
const fastest = (some: MotionSample[]) =>
  Math.max(...some.map(({ gx, gy, gz }) => Math.hypot(gx, gy, gz)))

describe('the simulated phone', () => {
  it('says what it is and measures the same facts as a phone', async () => {
    source.perform('swing')
    await run(3000)
    const facts = source.facts()
    expect(facts).toMatchObject({ simulated: true, hasGyro: true, accelSign: 1 })
    expect(facts).toMatchObject({ accelStepMps2: 0.1, gyroStepDps: 0.1 })
    expect(facts.rateHz).toBeCloseTo(60, 0)
  })

  it('shows gravity and little else while nothing is asked of it', async () => {
    const rest = await run(2000)
    expect(rest.length).toBeGreaterThanOrEqual(118)
    for (const { ax, ay, az } of rest) {
      expect(Math.abs(Math.hypot(ax, ay, az) - STANDARD_GRAVITY_MPS2)).toBeLessThan(1)
    }
    expect(fastest(rest)).toBeLessThan(15)
  })

  it.each(['raise', 'swing', 'ring', 'sweep', 'pour', 'knock'])(
    'performs %s and comes to rest again',
    async (movement) => {
      await run(500)
      source.perform(movement)
      expect(fastest(await run(2500))).toBeGreaterThan(40)
      await run(500)
      expect(fastest(await run(1000))).toBeLessThan(15)
    },
  )

  it('lists the movements that it can perform', () => {
    const ids = source.movements().map(({ id }) => id)
    expect(ids.length).toBeGreaterThanOrEqual(6)
    for (const id of ids) expect(() => source.perform(id)).not.toThrow()
  })

  it('follows the pointer', async () => {
    await run(500)
    for (let i = 0; i < 10; i++) {
      source.drag(30, 0)
      await vi.advanceTimersByTimeAsync(16)
    }
    expect(fastest(samples)).toBeGreaterThan(40)
  })

  it('is held otherwise by another tester, the same for the same number', async () => {
    const gravityOf = async (tester: number) => {
      source.setTester(tester)
      const rest = await run(1000)
      return rest.reduce((sum, { ax }) => sum + ax, 0) / rest.length
    }
    const [first, other, again] = [await gravityOf(0), await gravityOf(2), await gravityOf(0)]
    expect(Math.abs(first - other)).toBeGreaterThan(1)
    expect(Math.abs(first - again)).toBeLessThan(0.3)
  })

  it('keeps its clock even and going up, through a stop as well', async () => {
    const before = await run(500)
    source.stop()
    await vi.advanceTimersByTimeAsync(1000)
    await source.start()
    const after = await run(500)
    const times = [...before, ...after].map(({ tMs }) => tMs)
    expect(times.every((tMs, i) => i === 0 || tMs > times[i - 1]!)).toBe(true)
    expect(after[0]!.tMs - before.at(-1)!.tMs).toBeGreaterThan(950)
  })

  it('loses readings when the page was blocked for long, as a phone does', async () => {
    const last = (await run(500)).at(-1)!.tMs
    samples = []
    const realNow = performance.now()
    const blocked = vi.spyOn(performance, 'now').mockReturnValue(realNow + 3000)
    await vi.advanceTimersByTimeAsync(17)
    blocked.mockRestore()
    expect(samples[0]!.tMs - last).toBeGreaterThan(2900)
  })
})
