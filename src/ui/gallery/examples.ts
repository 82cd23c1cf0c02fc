import type { Evaluation } from '../../shared/model/evaluation'
import type { DistanceTable } from '../../shared/present/distances'
import type { Ribbon } from '../../shared/ribbon/ribbon'
import { wilson } from '../../shared/statistics/wilson'
import { GALLERY } from '../../shared/words/en/gallery'

// Made up to show each state of a part; nothing here was measured, and the gallery says so.

const GESTURES = [GALLERY.raise, GALLERY.ring, GALLERY.sweep].map((name) => ({
  id: name.toLowerCase(),
  name,
}))

/** Rows performed, columns answered, the last none: a clear gesture, a confused pair, a rejection. */
export const CONFUSION = [
  [24, 0, 0, 0],
  [0, 17, 6, 1],
  [0, 2, 20, 2],
]

export const EVALUATION: Evaluation = {
  holdout: 'tester',
  thresholdFactor: 1,
  gestures: GESTURES,
  testers: ['A1', 'B2', 'C3'],
  confusion: CONFUSION,
  accuracy: wilson(61, 72),
  rejected: wilson(3, 72),
  scores: GESTURES.map(({ id, name }, own) => {
    const hits = CONFUSION[own]?.[own] ?? 0
    const answered = CONFUSION.reduce((sum, row) => sum + (row[own] ?? 0), 0)
    const recall = wilson(hits, 24)
    return { gestureId: id, name, recall, precision: wilson(hits, answered) }
  }),
  outcomes: [],
  skipped: [],
  background: null,
  folds: [],
}

/** One within its threshold, one just beyond, one off the axis. */
export const DISTANCES: DistanceTable = {
  axisEnd: 4000,
  rows: [
    row(GALLERY.ring, 1120, 1800, 'nearest'),
    row(GALLERY.sweep, 2050, 1900, 'runner-up'),
    row(GALLERY.raise, 9400, 1700, 'other'),
  ],
}

function row(
  name: string,
  distance: number,
  threshold: number,
  role: 'nearest' | 'runner-up' | 'other',
) {
  const within = distance <= threshold
  return { gestureId: name.toLowerCase(), name, distance, threshold, role, within }
}

/** Curves of two whole-number frequencies, fast in the middle. */
export function ribbonExample(across: number, down: number): Ribbon {
  const points = Array.from({ length: 48 }, (_, n) => {
    const t = (n / 47) * Math.PI * 1.8
    return {
      x: 0.5 + 0.4 * Math.sin(across * t),
      y: 0.5 - 0.4 * Math.cos(down * t),
      width: Math.sin((n / 47) * Math.PI),
      halo: 0.05,
    }
  })
  return { kind: 'path', takes: 6, points, extentDeg: 80, extentCm: 40, durationMs: 900 }
}

/** Energy of two movements in rest, at 60 samples a second; the second stays below the threshold. */
export const ENERGY = Uint32Array.from({ length: 240 }, (_, n) =>
  Math.round(60 + bump(n, 70, 14) * 9000 + bump(n, 175, 10) * 420),
)

export const ON_THRESHOLD = 900
export const OFF_THRESHOLD = 400

export const CUTS = [
  { start: 44, end: 98, text: GALLERY.ring, rejected: false },
  { start: 158, end: 192, text: GALLERY.tooShort, rejected: true },
]

function bump(n: number, middle: number, width: number): number {
  return Math.exp(-(((n - middle) / width) ** 2))
}
