// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { expect, test } from 'vitest'
import { TRADE_OFF_FACTORS } from '../../../src/shared/evaluation/trade-off'
import type { Evaluation } from '../../../src/shared/model/evaluation'
import { TradeOffView } from '../../../src/ui/proof/trade-off'
import { evaluation as measured } from '../../shared/present/present.fixture'

/** Ten takes, answered from factors 0.55 to 1.45 on; three movements nobody meant. */
const evaluation: Evaluation = {
  ...measured([[0, 0, 10]]),
  background: {
    hours: 0.5,
    activations: 1,
    perHour: 2,
    low: 0.05,
    high: 11.1,
    segments: 3,
    acceptedFrom: [0.9, 1.3, 1.9],
  },
}
for (const [i, outcome] of evaluation.outcomes.entries()) outcome.acceptedFrom = 0.55 + i / 10

function shown(own: Evaluation) {
  const root = document.createElement('div')
  const kept: number[] = []
  const keep = async (factor: number) => {
    kept.push(factor)
  }
  act(() => render(<TradeOffView evaluation={own} stale={false} keep={keep} />, root))
  const slider = root.querySelector<HTMLInputElement>('input[type=range]')
  if (slider === null) throw new Error('no slider')
  const move = (step: number, kind: 'input' | 'change') =>
    act(() => {
      slider.value = String(step)
      slider.dispatchEvent(new Event(kind, { bubbles: true }))
    })
  return { root, kept, move }
}

test('shows misses and activations of the factor that is set, with count and hours', () => {
  const { root } = shown(evaluation)
  expect(root.textContent).toContain('× 1.00')
  expect(root.textContent).toContain('5/10 takes')
  expect(root.textContent).toContain('1 activation in')
})

test('figures follow the thumb at once; the factor is kept when it is let go', async () => {
  const { root, kept, move } = shown(evaluation)
  await move(0, 'input')
  expect(root.textContent).toContain('× 0.50')
  expect(root.textContent).toContain('10/10 takes')
  expect(root.textContent).toContain('0 activations in')
  expect(kept).toEqual([])
  await move(TRADE_OFF_FACTORS.length - 1, 'change')
  expect(kept).toEqual([2])
})

test('another rate to claim asks for other hours', async () => {
  const { root } = shown(evaluation)
  const sentence = () => root.textContent?.match(/[\d.]+ h more background/)?.[0]
  const before = sentence()
  expect(before).toBeDefined()
  await act(() => {
    const [, , strictest] = root.querySelectorAll('input[type=radio]')
    strictest?.dispatchEvent(new Event('change', { bubbles: true }))
  })
  expect(sentence()).toBeDefined()
  expect(sentence()).not.toBe(before)
})

test('without background there is no curve, and activations are said to be not known', () => {
  const { root } = shown({ ...evaluation, background: null })
  expect(root.querySelector('.trade-off-plot')).toBeNull()
  expect(root.textContent).toContain('not known')
})
