import { describe, expect, it } from 'vitest'
import { learnThreshold } from '../../../src/shared/training/thresholds'

const within = [800, 900, 950, 1000, 1050, 1100, 1200]

describe('a threshold', () => {
  it('lies beyond all own takes when nothing foreign is near', () => {
    const threshold = learnThreshold({ within, foreign: [9000], between: [5000, 6000] })
    expect(threshold).toBeGreaterThan(1200)
    expect(threshold).toBeLessThan(5000)
    expect(Number.isInteger(threshold)).toBe(true)
  })

  it('stays below foreign movements that come near, even at the cost of a few own takes', () => {
    const foreign = [1250, 1260, 1300, 1310, 1350, 1400]
    const threshold = learnThreshold({ within, foreign, between: [5000] })
    expect(threshold).toBeLessThan(1250)
    expect(threshold).toBeGreaterThan(1000)
  })

  it('does not go beyond the middle of other gestures for want of background', () => {
    const far = learnThreshold({ within, foreign: [], between: [1300, 1310, 1320] })
    expect(far).toBeLessThanOrEqual(1310)
  })

  it('takes in a second heap of own takes, as a tester of another manner makes', () => {
    const heaps = [...within, 4400, 4450, 4500, 4550]
    const threshold = learnThreshold({ within: heaps, foreign: [5500], between: [6000] })
    expect(threshold).toBeGreaterThan(4500)
  })

  it('leaves more room when it has seen few takes', () => {
    const few = learnThreshold({ within: [1000, 1100], foreign: [], between: [9000] })
    const many = learnThreshold({
      within: Array.from({ length: 40 }, (_, i) => 1000 + 2.5 * i),
      foreign: [],
      between: [9000],
    })
    expect(few).toBeGreaterThan(many ?? Number.POSITIVE_INFINITY)
  })

  it('is taken from the other gestures when a gesture has one take, and unknown without those', () => {
    const lone = { within: [Number.POSITIVE_INFINITY], foreign: [] }
    expect(learnThreshold({ ...lone, between: [2000, 2000] })).toBe(1000)
    expect(learnThreshold({ ...lone, between: [] })).toBeNull()
  })
})
