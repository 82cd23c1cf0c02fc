import { expect, test } from 'vitest'
import { CUTS, cutRates } from '../../../src/shared/evaluation/cut-rates'

test('every take is counted in one way of being cut, with all takes as n', () => {
  const outcomes = (['ok', 'ok', 'split', 'missed', 'long'] as const).map((cut) => ({ cut }))
  const rates = cutRates(outcomes)
  expect(CUTS.map((cut) => rates[cut].hits)).toEqual([2, 1, 1, 1, 0])
  for (const cut of CUTS) expect(rates[cut].n).toBe(5)
})
