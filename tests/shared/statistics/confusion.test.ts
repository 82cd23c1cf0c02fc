import { ConfusionMatrix } from 'ml-confusion-matrix'
import { describe, expect, test } from 'vitest'
import {
  accuracy,
  accuracyOfAnswered,
  countConfusion,
  f1,
  macroF1,
  precision,
  recall,
  rejected,
} from '../../../src/shared/statistics/confusion'
import { createRandom } from '../../../src/shared/statistics/random'

const withReject = (rows: number[][]) => rows.map((row) => [...row, 0])

describe('confusion matrix', () => {
  test('counts as in the scikit-learn documentation, rows performed', () => {
    expect(countConfusion([2, 0, 2, 2, 0, 1], [0, 0, 2, 2, 0, 2], 3)).toEqual([
      [2, 0, 0, 0],
      [0, 0, 1, 0],
      [1, 0, 2, 0],
    ])
  })

  test('a rejected take stands in the last column and costs recall but not precision', () => {
    const matrix = countConfusion([0, 0, 1, 1], [0, null, 1, 0], 2)
    expect(matrix).toEqual([
      [1, 0, 1],
      [1, 1, 0],
    ])
    expect(recall(matrix, 0)).toMatchObject({ hits: 1, n: 2 })
    expect(precision(matrix, 0)).toMatchObject({ hits: 1, n: 2 })
    expect(precision(matrix, 1)).toMatchObject({ hits: 1, n: 1 })
    expect(rejected(matrix)).toMatchObject({ hits: 1, n: 4 })
    expect(accuracy(matrix)).toMatchObject({ hits: 2, n: 4 })
    expect(accuracyOfAnswered(matrix)).toMatchObject({ hits: 2, n: 3 })
  })

  test('precision .5 0 1, recall 1 0 .67, F1 .67 0 .80, macro .49 (scikit-learn report example)', () => {
    const matrix = countConfusion([0, 1, 2, 2, 2], [0, 0, 2, 2, 1], 3)
    expect([0, 1, 2].map((i) => precision(matrix, i).value)).toEqual([0.5, 0, 1])
    expect([0, 1, 2].map((i) => recall(matrix, i).value)).toEqual([1, 0, 2 / 3])
    expect(f1(matrix, 0)).toBeCloseTo(2 / 3, 12)
    expect(f1(matrix, 1)).toBe(0)
    expect(f1(matrix, 2)).toBeCloseTo(0.8, 12)
    expect(macroF1(matrix)).toBeCloseTo(0.49, 2)
    expect(accuracy(matrix).value).toBe(0.6)
  })

  test('a 3 × 3 matrix with accuracy .85 and recall, precision and F1 all .9 .8 .85', () => {
    const matrix = withReject([
      [18, 1, 1],
      [2, 16, 2],
      [0, 3, 17],
    ])
    expect(accuracy(matrix).value).toBe(0.85)
    for (const [i, value] of [0.9, 0.8, 0.85].entries()) {
      expect(recall(matrix, i).value).toBeCloseTo(value, 12)
      expect(precision(matrix, i).value).toBeCloseTo(value, 12)
      expect(f1(matrix, i)).toBeCloseTo(value, 12)
    }
  })

  test('40 5 10 45 has precision .888889 and F1 .842105263', () => {
    const matrix = withReject([
      [40, 10],
      [5, 45],
    ])
    expect(precision(matrix, 0).value).toBeCloseTo(0.888889, 6)
    expect(f1(matrix, 0)).toBeCloseTo(0.842105263, 9)
  })

  test('agrees with ml-confusion-matrix on random answers', () => {
    const random = createRandom(7)
    const truths = Array.from({ length: 200 }, () => random.integer(5))
    const answers = truths.map((truth) => (random.next() < 0.7 ? truth : random.integer(5)))
    const matrix = countConfusion(truths, answers, 5)
    const reference = ConfusionMatrix.fromLabels(truths, answers)
    expect(accuracy(matrix).value).toBeCloseTo(reference.getAccuracy(), 12)
    for (let gesture = 0; gesture < 5; gesture++) {
      expect(recall(matrix, gesture).value).toBeCloseTo(reference.getTruePositiveRate(gesture), 12)
      expect(precision(matrix, gesture).value).toBeCloseTo(
        reference.getPositivePredictiveValue(gesture),
        12,
      )
      expect(f1(matrix, gesture)).toBeCloseTo(reference.getF1Score(gesture), 12)
    }
  })

  test('a gesture never performed has no recall, and an unknown gesture is refused', () => {
    const matrix = countConfusion([0], [0], 2)
    expect(recall(matrix, 1)).toMatchObject({ n: 0, value: Number.NaN })
    expect(f1(matrix, 1)).toBe(0)
    expect(() => countConfusion([2], [0], 2)).toThrow(RangeError)
    expect(() => countConfusion([0], [0, 0], 2)).toThrow(RangeError)
  })
})
