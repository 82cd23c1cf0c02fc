import { describe, expect, test } from 'vitest'
import { demonstrate, demonstrationSamples } from '../../../src/shared/collect/demonstration'
import { fitPlan, MAX_CODE_CHARACTERS } from '../../../src/shared/collect/fit-plan'
import type { Plan } from '../../../src/shared/collect/plan'
import { decodePlanLink } from '../../../src/shared/collect/plan-link'
import type { SampleBlock } from '../../../src/shared/model/sample'
import { drawCode, QUIET_MODULES } from '../../../src/shared/qr/draw-code'
import { createRandom } from '../../../src/shared/statistics/random'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { samplePlan } from './samples'

const BASE = 'https://example.org/movewright/#/join/'

/** A turn about z at an even rate for two seconds, 60 readings a second, with noise. */
function turn(dps: number): SampleBlock {
  const random = createRandom(1)
  const count = 120
  const block = { tMs: new Float64Array(count), values: new Float32Array(count * 6) }
  for (let n = 0; n < count; n++) {
    block.tMs[n] = (n * 1000) / 60
    block.values.set([0, random.normal(), -9.80665, 0, 0, dps + random.normal()], n * 6)
  }
  return block
}

/** A plan of so many gestures with demonstrations that hardly deflate. */
function planOf(gestures: number, wordsLength: number, rows: number): Plan {
  const random = createRandom(gestures)
  const letters = 'abcdefghijklmnopqrstuvwxyz '
  const text = () => Array.from({ length: wordsLength }, () => letters[random.integer(27)]).join('')
  const one = (n: number) => ({
    gestureId: Array.from({ length: 32 }, () => random.integer(16).toString(16)).join(''),
    name: `Gesture ${n + 1}`,
    takes: 5,
    words: text(),
    demonstration: {
      periodMs: 50,
      values: Array.from({ length: rows * 6 }, () => random.integer(255) - 127),
    },
  })
  const { accel, gyro } = defaultTarget()
  return samplePlan({
    gestures: Array.from({ length: gestures }, (_, n) => one(n)),
    ranges: { accel, gyro },
  })
}

function fitted(plan: Plan) {
  const fit = fitPlan(plan, BASE)
  if (!fit.ok) throw new Error(fit.message)
  return fit.value
}

describe('a demonstration', () => {
  test('keeps the angle turned, whatever its period, and the sign of the standard', () => {
    for (const periodMs of [50, 100, 200]) {
      const shown = demonstrate(turn(400), -1, periodMs)
      const samples = demonstrationSamples(shown!)
      const degrees = samples.tMs.reduce(
        (sum, _, n) => sum + (samples.values[n * 6 + 5]! * periodMs) / 1000,
        0,
      )
      expect(degrees / 400).toBeCloseTo(samples.tMs.length * (periodMs / 1000), 1)
      expect(samples.values[2]).toBe(10)
    }
  })

  test('leaves out the rest at either end, and keeps the part that counts where it is trimmed', () => {
    const still = turn(0)
    const block = turn(400)
    for (let n = 0; n < 120; n++) {
      if (n < 40 || n >= 90) block.values.set(still.values.subarray(n * 6, n * 6 + 6), n * 6)
    }
    const lengthMs = (shown: ReturnType<typeof demonstrate>) =>
      (shown!.values.length / 6) * shown!.periodMs
    // 50 readings at 60 Hz are 833 ms, and 200 ms are shown before and after.
    expect(lengthMs(demonstrate(block, 1, 50))).toBeCloseTo(1200, -2)
    expect(lengthMs(demonstrate(block, 1, 50, { startMs: 700, endMs: 1200 }))).toBe(500)
  })

  test('of next to nothing is none', () => {
    const block = turn(1)
    expect(demonstrate({ tMs: block.tMs.slice(0, 3), values: block.values }, 1, 80)).toBeNull()
  })
})

describe('a plan for codes', () => {
  test('stays as it is where it fits', () => {
    const { links, thinned, leftOut } = fitted(samplePlan())
    expect(links).toHaveLength(1)
    expect(links[0]!.plan).toEqual(samplePlan())
    expect([thinned, leftOut]).toEqual([[], []])
  })

  test('has its demonstrations thinned before any is left out', () => {
    const { links, thinned, leftOut } = fitted(planOf(2, 20, 60))
    expect(links[0]!.plan.gestures.map((one) => one.demonstration?.periodMs)).toEqual([100, 100])
    expect(thinned).toEqual(['Gesture 1', 'Gesture 2'])
    expect(leftOut).toEqual([])
  })

  test('says which demonstrations were left out', () => {
    const { links, leftOut } = fitted(planOf(8, 20, 120))
    expect(links).toHaveLength(1)
    const without = links[0]!.plan.gestures.filter((one) => one.demonstration === null)
    expect(new Set(leftOut)).toEqual(new Set(without.map((one) => one.name)))
    expect(leftOut.length).toBeGreaterThan(3)
  })

  test('goes to several codes where words alone are too many, each a plan of its own', () => {
    const plan = planOf(12, 180, 0)
    const { links } = fitted(plan)
    expect(links.length).toBeGreaterThan(1)
    const read = links.map(({ address }) => decodePlanLink(address.slice(BASE.length)))
    const plans = read.flatMap((one) => (one.ok ? [one.value] : []))
    expect(plans.flatMap((one) => one.gestures.map(({ name }) => name))).toEqual(
      plan.gestures.map(({ name }) => name),
    )
    expect(plans.map(({ part }) => part.number)).toEqual(plans.map((_, n) => n + 1))
    expect(plans.map(({ backgroundMs }) => backgroundMs > 0).filter(Boolean)).toHaveLength(1)
  })

  test('never makes a code of more than 117 modules a side', () => {
    for (const plan of [samplePlan(), planOf(8, 20, 120), planOf(12, 180, 0), planOf(20, 60, 30)]) {
      for (const { address } of fitted(plan).links) {
        const code = drawCode(address)
        expect(code.ok && code.value.length - 2 * QUIET_MODULES).toBeLessThanOrEqual(117)
      }
    }
  })

  test('fills such a code to the last character', () => {
    const sides = [MAX_CODE_CHARACTERS, MAX_CODE_CHARACTERS + 1].map((length) => {
      const code = drawCode('a'.repeat(length))
      return code.ok ? code.value.length - 2 * QUIET_MODULES : 0
    })
    expect(sides).toEqual([117, 121])
  })
})
