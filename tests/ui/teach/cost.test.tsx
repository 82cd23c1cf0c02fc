// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { render } from 'preact'
import { expect, test } from 'vitest'
import { pairedLoss } from '../../../src/shared/statistics/paired'
import { wilson } from '../../../src/shared/statistics/wilson'
import type { TeachCost } from '../../../src/shared/teach/teach-cost'
import type { TeachState } from '../../../src/state/teach'
import { Cost } from '../../../src/ui/teach/cost'

function shown(accepted: number, hits: number, n: number): HTMLElement {
  const value: TeachCost = {
    holdout: 'tester',
    rounds: 3,
    accepted,
    before: wilson(hits, n),
    after: wilson(hits, n),
    loss: pairedLoss(0, 0, n),
    p: 1,
    testers: { better: 0, worse: 0, equal: accepted },
    losers: [],
    lost: [],
    place: null,
    background: null,
  }
  const cost: TeachState['cost'] = signal({ state: 'done', value, stale: false })
  const root = document.createElement('div')
  render(<Cost teach={{ cost } as TeachState} />, root)
  return root
}

test('the cost shows both shares, and says beside the bound that testers may differ more', () => {
  const root = shown(3, 50, 56)
  const names = [...root.querySelectorAll('.rate-name')].map(({ textContent }) => textContent)
  expect(names.filter((name) => name !== '')).toEqual(['without', 'with'])
  expect(root.textContent).toContain('over takes; testers may differ more. Of 3 testers')
})

test('where every round refused there is no share to draw', () => {
  const root = shown(0, 0, 0)
  expect(root.textContent).toContain('None of 3 rounds')
  expect(root.querySelectorAll('.rate')).toHaveLength(0)
  expect(root.textContent).not.toMatch(/no data|NaN/)
})
