import { describe, expect, test } from 'vitest'
import { verdictOn } from '../../../src/shared/decide/setting-result'
import { errorOverTesters, lossOverTesters } from '../../../src/shared/decide/tester-loss'
import { pairedLoss } from '../../../src/shared/statistics/paired'

const none = { lost: 0, won: 0, n: 100 }

describe('a loss over testers', () => {
  test('that is all of one tester in four is not certain, though its takes alone would make it so', () => {
    const overTakes = pairedLoss(20, 0, 400)
    expect(verdictOn(overTakes, 0.02)).toBe('worse')
    const testers = [{ lost: 20, won: 0, n: 100 }, none, none, none]
    const loss = lossOverTesters(overTakes, testers)
    // Sums of four equal clusters, so the mean of 0.2, 0, 0, 0: 0.05 with a standard error of 0.05.
    expect(errorOverTesters(testers)).toBeCloseTo(0.05, 12)
    expect(loss.low).toBeCloseTo(0.05 - 3.182 * 0.05, 9)
    expect(loss.high).toBeCloseTo(0.05 + 3.182 * 0.05, 9)
    expect(verdictOn(loss, 0.02)).toBe('open')
  })

  test('keeps the interval over takes where that is wider: testers that agree are no proof', () => {
    const overTakes = pairedLoss(0, 0, 400)
    expect(lossOverTesters(overTakes, [none, none, none, none])).toEqual(overTakes)
  })

  test('with two testers is one over takes, as what testers disagree on is not known', () => {
    const overTakes = pairedLoss(20, 0, 200)
    expect(lossOverTesters(overTakes, [{ lost: 20, won: 0, n: 100 }, none])).toEqual(overTakes)
  })
})
