import type { Rate } from '../model/evaluation'
import { wilson } from './wilson'

/**
 * Confusion matrices: rows performed, columns answered, one row a gesture; the last column counts
 * rejects, so that a matrix of n gestures is n × (n + 1).
 */
export type Confusion = number[][]

/**
 * Counts answers. truths: indices of gestures; answers: index, or null for reject.
 * @throws RangeError when an index is out of range or the lists differ in length: a bug.
 */
export function countConfusion(
  truths: readonly number[],
  answers: readonly (number | null)[],
  gestureCount: number,
): Confusion {
  if (truths.length !== answers.length) throw new RangeError('one answer a take is needed')
  const matrix = Array.from({ length: gestureCount }, () => new Array(gestureCount + 1).fill(0))
  for (const [i, truth] of truths.entries()) {
    const column = answers[i] ?? gestureCount
    const row = matrix[truth]
    if (row?.[column] === undefined) throw new RangeError(`take ${i} has an unknown gesture`)
    row[column] += 1
  }
  return matrix
}

function rowTotal(matrix: Confusion, gesture: number): number {
  return matrix[gesture]!.reduce((sum, count) => sum + count, 0)
}

function columnTotal(matrix: Confusion, column: number): number {
  return matrix.reduce((sum, row) => sum + row[column]!, 0)
}

function total(matrix: Confusion): number {
  return matrix.reduce((sum, _row, gesture) => sum + rowTotal(matrix, gesture), 0)
}

function diagonal(matrix: Confusion): number {
  return matrix.reduce((sum, row, gesture) => sum + row[gesture]!, 0)
}

/** Of the takes of a gesture, the share answered with it. Rejects count as not answered. */
export function recall(matrix: Confusion, gesture: number): Rate {
  return wilson(matrix[gesture]![gesture]!, rowTotal(matrix, gesture))
}

/** Of the answers with a gesture, the share that were takes of it. */
export function precision(matrix: Confusion, gesture: number): Rate {
  return wilson(matrix[gesture]![gesture]!, columnTotal(matrix, gesture))
}

/**
 * Harmonic mean of recall and precision, 2 tp / (2 tp + fp + fn); 0 when the gesture was neither
 * performed nor answered. It is no share of independent trials, so it has no interval.
 */
export function f1(matrix: Confusion, gesture: number): number {
  const hits = matrix[gesture]![gesture]!
  const sides = rowTotal(matrix, gesture) + columnTotal(matrix, gesture)
  return sides === 0 ? 0 : (2 * hits) / sides
}

/** Mean of f1 over all gestures, each weighing the same. */
export function macroF1(matrix: Confusion): number {
  return matrix.reduce((sum, _row, gesture) => sum + f1(matrix, gesture), 0) / matrix.length
}

/** Of all takes, the share answered with their own gesture. */
export function accuracy(matrix: Confusion): Rate {
  return wilson(diagonal(matrix), total(matrix))
}

/** Of all takes, the share rejected. */
export function rejected(matrix: Confusion): Rate {
  return wilson(columnTotal(matrix, matrix.length), total(matrix))
}

/** Of the takes answered with some gesture, the share answered with the right one. */
export function accuracyOfAnswered(matrix: Confusion): Rate {
  return wilson(diagonal(matrix), total(matrix) - columnTotal(matrix, matrix.length))
}
