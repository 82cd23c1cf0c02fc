import { describe, expect, test } from 'vitest'
import type { Evaluation } from '../../../src/shared/model/evaluation'
import type { Background, Take } from '../../../src/shared/model/library'
import { countLibrary, freeTesterCode } from '../../../src/shared/present/library-counts'
import { nextStep } from '../../../src/shared/present/next-step'

const gestures = [
  { id: 'ring', name: 'Ring', note: '' },
  { id: 'pour', name: 'Pour', note: '' },
]

function takes(gestureId: string, testerCode: string, count: number): Take[] {
  return Array.from({ length: count }, () => ({ kind: 'take', gestureId, testerCode }) as Take)
}

function background(durationMs: number): Background {
  return { kind: 'background', testerCode: 'T01', durationMs } as Background
}

const step = (
  recordings: (Take | Background)[],
  of = gestures,
  evaluation: Evaluation | null = null,
  unsaved = 0,
) => nextStep(countLibrary(of, recordings), evaluation, unsaved)

describe('the next step', () => {
  test('of an empty library is a first gesture', () => {
    expect(step([], [])).toMatchObject({ kind: 'add-gesture' })
  })

  test('is takes of the first gesture that has fewer than five', () => {
    const recordings = [...takes('ring', 'T01', 5), ...takes('pour', 'T01', 2)]
    expect(step(recordings)).toMatchObject({
      kind: 'record',
      gestureId: 'pour',
      text: 'Pour has 2 takes; 5 are enough to begin.',
    })
  })

  test('is a second gesture when one is alone', () => {
    expect(step(takes('ring', 'T01', 9), gestures.slice(0, 1))).toMatchObject({
      kind: 'add-gesture',
    })
  })

  test('is background until there are two minutes of it', () => {
    const recordings = [...takes('ring', 'T01', 5), ...takes('pour', 'T02', 5)]
    expect(step([...recordings, background(119_000)])).toMatchObject({ kind: 'background' })
    expect(step([...recordings, background(119_000), background(1000)])).toMatchObject({
      kind: 'prove',
    })
  })

  test('is another tester when every take is by one, beginning with the rarest gesture', () => {
    const recordings = [...takes('ring', 'T01', 8), ...takes('pour', 'T01', 6), background(2e5)]
    expect(step(recordings)).toMatchObject({ kind: 'record', gestureId: 'pour', newTester: true })
  })

  test('is a backup once takes are many, and before all else once they are very many', () => {
    const thin = takes('ring', 'T01', 3)
    const full = [...takes('ring', 'T01', 9), ...takes('pour', 'T02', 9), background(2e5)]
    expect(step(full, gestures, null, 19)).toMatchObject({ kind: 'prove' })
    expect(step(full, gestures, null, 20)).toMatchObject({ kind: 'backup' })
    expect(step(thin, gestures, null, 99)).toMatchObject({ kind: 'record' })
    expect(step(thin, gestures, null, 100)).toMatchObject({ kind: 'backup' })
  })

  test('is the pair that is confused, once it was measured', () => {
    const recordings = [
      ...takes('ring', 'T01', 20),
      ...takes('pour', 'T02', 20),
      background(200_000),
    ]
    const evaluation = {
      gestures,
      confusion: [
        [17, 3, 0],
        [3, 16, 1],
      ],
      outcomes: [],
      accuracy: { hits: 33, n: 40 },
    } as unknown as Evaluation
    expect(step(recordings, gestures, evaluation)).toMatchObject({
      kind: 'look-at-pair',
      gestureIds: ['ring', 'pour'],
      text: 'Ring and Pour are confused in 6 of 40 takes.',
    })
  })
})

describe("testers' codes", () => {
  test('the free one is the lowest that nobody has', () => {
    expect(freeTesterCode([])).toBe('T01')
    expect(freeTesterCode(['T01', 'T03', 'anna'])).toBe('T02')
    expect(
      freeTesterCode(Array.from({ length: 99 }, (_, n) => `T${String(n + 1).padStart(2, '0')}`)),
    ).toBe('T100')
  })
})
