import { describe, expect, it } from 'vitest'
import type { Evaluation } from '../../../src/shared/model/evaluation'
import { placeStep } from '../../../src/shared/present/place-step'

const gestures = [
  { id: 'ring', name: 'Ring' },
  { id: 'pour', name: 'Pour' },
]

function evaluation(confusion: number[][], hits: number): Evaluation {
  return { gestures, confusion, outcomes: [], accuracy: { hits, n: 40 } } as unknown as Evaluation
}

const good = evaluation(
  [
    [20, 0, 0],
    [0, 19, 1],
  ],
  39,
)
const confused = evaluation(
  [
    [17, 3, 0],
    [3, 16, 1],
  ],
  33,
)

describe('the next step of a place', () => {
  it('is to record where there are no takes', () => {
    for (const place of ['try', 'proof', 'prop'] as const) {
      expect(placeStep(place, 0, null)).toMatchObject({ href: '#/moves' })
    }
  })

  it('is to measure while nothing is measured, where it is not what the place does anyway', () => {
    expect(placeStep('try', 40, null)).toMatchObject({ href: '#/proof' })
    expect(placeStep('prop', 40, null)).toMatchObject({ href: '#/proof' })
    expect(placeStep('proof', 40, null)).toBeNull()
  })

  it('is the pair that is confused, and from Proof what to change about it', () => {
    expect(placeStep('try', 40, confused)).toEqual({
      text: 'Ring and Pour are confused in 6 of 40 takes.',
      action: 'Look at them',
      href: '#/proof',
    })
    expect(placeStep('proof', 40, confused)).toMatchObject({ href: '#/decide' })
  })

  it('is stage and report when the figures are good, and nothing on Prop, whose button exports', () => {
    expect(placeStep('try', 40, good)).toMatchObject({ href: '#/stage' })
    expect(placeStep('proof', 40, good)).toMatchObject({
      text: '39/40 held-out takes were understood. Put it on one page.',
      href: '#/report',
    })
    expect(placeStep('prop', 40, good)).toBeNull()
  })
})
