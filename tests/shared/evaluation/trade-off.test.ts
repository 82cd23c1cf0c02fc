import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'
import { atFactor } from '../../../src/shared/evaluation/at-factor'
import { evaluateLibrary } from '../../../src/shared/evaluation/evaluate-library'
import {
  hoursMissingToClaim,
  nearestStep,
  TRADE_OFF_FACTORS,
  tradeOffAt,
  tradeOffCurve,
} from '../../../src/shared/evaluation/trade-off'
import type { Evaluation } from '../../../src/shared/model/evaluation'
import type { MatcherWish } from '../../../src/shared/model/library'
import { hoursWithoutEventToClaim } from '../../../src/shared/statistics/poisson'
import { tinyLibrary } from '../training/tiny-library'

let core: Core

beforeAll(async () => {
  core = await loadCoreForNode()
})

async function evaluate(thresholdFactor: number, matcher: MatcherWish): Promise<Evaluation> {
  const full = tinyLibrary({ backgroundS: 60, seed: 5 })
  full.library.training = { ...full.library.training, thresholdFactor, matcher }
  const evaluation = await evaluateLibrary(core, full, 'tester')
  if (!evaluation.ok) throw new Error(evaluation.message)
  return evaluation.value
}

describe.each(['template', 'kernel'] as const)('the trade-off of a %s model', (matcher) => {
  let measured: Evaluation

  beforeAll(async () => {
    measured = await evaluate(1, matcher)
  })

  it('is compared in the way that was asked for', () => {
    for (const fold of measured.folds) {
      expect(fold.matcher).toBe(matcher)
      expect(fold.distancePerLog === null).toBe(matcher === 'template')
    }
  })

  it('has at its own factor the counts of the evaluation', () => {
    const { missed, background } = tradeOffAt(measured, 1)
    expect(missed.n).toBe(measured.accuracy.n)
    expect(missed.hits).toBe(measured.accuracy.n - measured.accuracy.hits)
    expect(background).toEqual(measured.background)
    expect(measured.background?.segments).toBeGreaterThan(0)
  })

  it('never misses more nor activates less as the factor rises', () => {
    const curve = tradeOffCurve(measured)
    for (const [i, point] of curve.entries()) {
      const before = curve[i - 1]
      if (before === undefined) continue
      expect(point.missed.hits).toBeLessThanOrEqual(before.missed.hits)
      expect(point.background?.activations).toBeGreaterThanOrEqual(
        before.background?.activations ?? Number.POSITIVE_INFINITY,
      )
    }
    expect(curve.at(0)?.missed.hits).toBeGreaterThan(curve.at(-1)?.missed.hits ?? 0)
  })

  it.each([0.6, 1.7])('foretells what training again with factor %s measures', async (factor) => {
    const again = await evaluate(factor, matcher)
    const foretold = atFactor(measured, factor)
    const answers = (evaluation: Evaluation) =>
      evaluation.outcomes.map(({ takeId, answer, event }) => [takeId, answer, event?.reason])
    expect(answers(foretold)).toEqual(answers(again))
    expect(foretold.confusion).toEqual(again.confusion)
    expect(foretold.background?.activations).toBe(again.background?.activations)
    for (const [i, { event }] of foretold.outcomes.entries()) {
      const wanted = again.outcomes[i]?.event?.threshold ?? 0
      // A threshold is rounded once when learned and once more when moved.
      expect(Math.abs((event?.threshold ?? 0) - wanted)).toBeLessThanOrEqual(2)
    }
  })
})

describe('the factors of the curve', () => {
  it('go from 0.5 to 2 in equal ratios and hold 1', () => {
    expect(TRADE_OFF_FACTORS.at(0)).toBe(0.5)
    expect(TRADE_OFF_FACTORS.at(-1)).toBe(2)
    expect(TRADE_OFF_FACTORS[nearestStep(1)]).toBe(1)
    for (const [step, factor] of TRADE_OFF_FACTORS.entries()) {
      expect(nearestStep(factor)).toBe(step)
    }
  })
})

describe('hours of background missing to claim a rate', () => {
  it('are those of the rule of three where nothing was activated', () => {
    const missing = hoursMissingToClaim({ activations: 0, hours: 0.5 }, 1)
    expect(missing).toBeCloseTo(hoursWithoutEventToClaim(1) - 0.5, 9)
  })

  it('grow with each activation seen, and are none once the hours are enough', () => {
    // R: poisson.test(1, alternative = "less") has the upper limit 4.743865.
    expect(hoursMissingToClaim({ activations: 1, hours: 0 }, 1)).toBeCloseTo(4.743865, 6)
    expect(hoursMissingToClaim({ activations: 1, hours: 5 }, 1)).toBe(0)
  })
})
