import { describe, expect, test } from 'vitest'
import {
  confusedPairSentence,
  mostConfusedPair,
  takesInCell,
  wrongCells,
} from '../../../src/shared/present/confused-pair'
import { distanceTable } from '../../../src/shared/present/distances'
import { evaluationWarnings, measuredSentence } from '../../../src/shared/words/en/trust'
import { evaluation, event, smallModel } from '../present/present.fixture'

describe('mostConfusedPair', () => {
  test('counts both directions of a pair against the takes of both', () => {
    const measured = evaluation([
      [0, 0, 17],
      [0, 1, 3],
      [1, 1, 17],
      [1, 0, 3],
      [2, 2, 16],
      [2, 0, 4],
    ])
    const pair = mostConfusedPair(measured)
    expect(pair).toMatchObject({ first: 0, second: 1, hits: 6, n: 40 })
    expect(pair!.takeIds).toHaveLength(6)
    expect(confusedPairSentence(measured, pair!)).toBe(
      'Ring and Swing are confused in 6 of 40 takes.',
    )
  })

  test('rejections are not confusions', () => {
    const measured = evaluation([
      [0, 0, 8],
      [1, null, 9],
    ])
    expect(mostConfusedPair(measured)).toBeNull()
  })

  test('cells off the diagonal are listed with the fullest first', () => {
    const measured = evaluation([
      [0, 0, 9],
      [0, 1, 1],
      [1, null, 3],
    ])
    expect(wrongCells(measured)).toEqual([
      { truth: 1, answer: null, count: 3 },
      { truth: 0, answer: 1, count: 1 },
    ])
  })

  test('a cell gives the takes that fell into it, rejections included', () => {
    const measured = evaluation([
      [0, 0, 1],
      [0, null, 2],
    ])
    expect(takesInCell(measured, 0, null)).toEqual(['take-1', 'take-2'])
    expect(takesInCell(measured, 1, 0)).toEqual([])
  })
})

describe('evaluationWarnings', () => {
  const enough: [number, number | null, number][] = [
    [0, 0, 12],
    [1, 1, 12],
    [2, 2, 12],
  ]

  test('two testers, enough takes and background give no warning', () => {
    expect(evaluationWarnings(evaluation(enough))).toEqual([])
  })

  test('a single tester is warned of', () => {
    const measured = { ...evaluation(enough), testers: ['T1'] }
    expect(evaluationWarnings(measured)[0]).toContain('One tester only')
    expect(measuredSentence(measured)).toBe('Held out: measured on 36 takes of 1 tester.')
  })

  test('takes held out with the same testers in training are warned of', () => {
    const measured = { ...evaluation(enough), holdout: 'take' as const }
    expect(evaluationWarnings(measured)[0]).toContain('same testers')
  })

  test('gestures with few takes are named, and missing background is said', () => {
    const measured = {
      ...evaluation([
        [0, 0, 12],
        [1, 1, 3],
        [2, 2, 12],
      ]),
      background: null,
    }
    const warnings = evaluationWarnings(measured)
    expect(warnings.some((text) => text.includes('Swing') && !text.includes('Ring'))).toBe(true)
    expect(warnings.some((text) => text.includes('background'))).toBe(true)
  })
})

describe('distanceTable', () => {
  test('rows stand in the order of the distances, with the two that decided marked', () => {
    const table = distanceTable(event({}), [540, 1310, 2000], smallModel())
    expect(table!.rows.map((row) => [row.name, row.role, row.within])).toEqual([
      ['Ring', 'nearest', true],
      ['Swing', 'runner-up', false],
      ['Pour', 'other', false],
    ])
  })

  test('the axis holds every threshold and the nearest distance, but not a far one', () => {
    const near = distanceTable(event({}), [540, 1310, 90_000], smallModel())!
    expect(near.axisEnd).toBeGreaterThan(1100)
    expect(near.axisEnd).toBeLessThan(3000)
    const allFar = distanceTable(event({}), [5000, 6000, 90_000], smallModel())!
    expect(allFar.axisEnd).toBeGreaterThan(5000)
  })

  test('a movement that was not compared has no table', () => {
    expect(distanceTable(event({}), null, smallModel())).toBeNull()
  })
})
