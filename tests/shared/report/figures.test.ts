// @vitest-environment happy-dom

import { beforeAll, describe, expect, it } from 'vitest'
import type { Evaluation, Rate } from '../../../src/shared/model/evaluation'
import { reportFile } from '../../../src/shared/report/report'
import { tinyLibrary } from '../training/tiny-library'
import { bareReport } from './report.fixture'

const NARROW = /[\u202f\u00a0]/g

/** An evaluation with counts that are all different, so that none can stand for another. */
function evaluation(): Evaluation {
  const rate = (hits: number, n: number): Rate => ({
    hits,
    n,
    value: hits / n,
    low: (hits - 0.5) / n,
    high: Math.min(1, (hits + 0.4) / n),
  })
  return {
    holdout: 'tester',
    thresholdFactor: 1.25,
    gestures: [
      { id: 'nod', name: 'Nod' },
      { id: 'shake', name: 'Shake' },
    ],
    testers: ['A1', 'B2'],
    confusion: [
      [41, 3, 5],
      [7, 37, 2],
    ],
    accuracy: rate(78, 95),
    rejected: rate(7, 95),
    scores: [
      { gestureId: 'nod', name: 'Nod', recall: rate(41, 49), precision: rate(41, 48) },
      { gestureId: 'shake', name: 'Shake', recall: rate(37, 46), precision: rate(37, 40) },
    ],
    outcomes: [],
    skipped: [{ takeId: 'x', reason: 'its tester performed one gesture only' }],
    background: {
      hours: 1.25,
      activations: 3,
      perHour: 2.4,
      low: 0.495,
      high: 7.01,
      segments: 23,
      acceptedFrom: [0.8, 0.9, 1.1],
    },
    folds: [
      { heldOut: 'A1', trainTakes: 46, testTakes: 49, matcher: 'both', distancePerLog: null },
      { heldOut: 'B2', trainTakes: 49, testTakes: 46, matcher: 'kernel', distancePerLog: null },
    ],
  }
}

describe('figures of a report', () => {
  let page: Document
  const rows = (caption: RegExp) => {
    const table = [...page.querySelectorAll('table')].find((one) =>
      caption.test(one.querySelector('caption')?.textContent ?? ''),
    )
    return [...(table?.querySelectorAll('tbody tr') ?? [])].map((row) =>
      [...row.children].map((cell) => (cell.textContent ?? '').replace(NARROW, ' ')),
    )
  }
  beforeAll(() => {
    const data = {
      ...bareReport(tinyLibrary()),
      evaluation: { value: evaluation(), at: null, stale: false },
    }
    page = new DOMParser().parseFromString(reportFile(data), 'text/html')
  })

  it('are those of the evaluation, each share with n and interval', () => {
    expect(rows(/^All held-out/)).toEqual([
      ['understood', '82.1 %', '78/95', '81.6 to 82.5 %'],
      ['rejected', '7.4 %', '7/95', '6.8 to 7.8 %'],
    ])
    expect(rows(/^Gesture by gesture/)).toEqual([
      ['Nod', '83.7 %', '41/49', '82.7 to 84.5 %', '85.4 %', '41/48', '84.4 to 86.3 %'],
      ['Shake', '80.4 %', '37/46', '79.3 to 81.3 %', '92.5 %', '37/40', '91.3 to 93.5 %'],
    ])
    expect(rows(/^Rounds/)).toEqual([
      ['A1', '49', '46', 'templates and kernels'],
      ['B2', '46', '49', 'kernel features'],
    ])
  })

  it('draw every count of the confusion matrix in its row', () => {
    const plot = [...page.querySelectorAll('svg')].find((one) =>
      one.querySelector('title')?.textContent?.startsWith('Confusion'),
    )
    const numbers = [...(plot?.querySelectorAll('text') ?? [])]
      .map(({ textContent }) => Number(textContent))
      .filter(Number.isInteger)
    expect(numbers).toEqual([41, 3, 5, 7, 37, 2])
    expect(page.body.textContent).toContain('7 × Shake → Nod, 5 × Nod → none, 3 × Nod → Shake')
  })

  it('tell false activations with hours and the exact interval', () => {
    expect(rows(/Garwood/)).toEqual([['false activations', '3', '1.25', '2.4', '0.495 to 7.01']])
  })

  it('tell what was left out and why', () => {
    expect(page.body.textContent).toContain('1 take, its tester performed one gesture only')
  })
})
