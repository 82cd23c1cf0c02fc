import { expect, it } from 'vitest'
import { runsOfPlan } from '../../../src/shared/collect/runs-of-plan'
import { asTester, newRun, RUN_BYTES } from '../../../src/shared/collect/session-record'
import { examplePlan } from '../../browser/collect-plan'

const AT = '2026-11-25T18:00:00.000Z'
const NOW_MS = Date.parse('2026-11-25T19:00:00.000Z')
const first = examplePlan({ part: { number: 1, of: 2 } })
const second = examplePlan({ part: { number: 2, of: 2 } })

function runOf(plan: typeof first, seed: number) {
  const random = Uint8Array.from({ length: RUN_BYTES }, (_, i) => (31 * i + seed) % 256)
  return newRun(plan, 'left', AT, random)
}

it('finds the session of this part that is not over', () => {
  const run = runOf(first, 1)
  expect(runsOfPlan(first, [run], NOW_MS)).toEqual({ open: run, otherPart: null })
  const over = { ...run, endedAt: AT }
  expect(runsOfPlan(first, [over], NOW_MS)).toEqual({ open: null, otherPart: null })
})

it('knows who performed the other part, once, and for a day', () => {
  const run = { ...runOf(first, 2), endedAt: AT }
  expect(runsOfPlan(second, [run], NOW_MS).otherPart).toBe(run)
  const done = { ...asTester(runOf(second, 3), run), endedAt: AT }
  expect(done.testerCode).toBe(run.testerCode)
  expect(runsOfPlan(second, [done, run], NOW_MS).otherPart).toBe(null)
  expect(runsOfPlan(second, [run], NOW_MS + 25 * 3_600_000).otherPart).toBe(null)
})

it('knows nobody by another plan', () => {
  const other = { ...first, id: 'another-plan' }
  expect(runsOfPlan(other, [runOf(first, 4)], NOW_MS)).toEqual({ open: null, otherPart: null })
})
