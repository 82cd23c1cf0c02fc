import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'
import { evaluateLibrary } from '../../../src/shared/evaluation/evaluate-library'
import type { Evaluation, Holdout } from '../../../src/shared/model/evaluation'
import type { FullLibrary } from '../../../src/shared/model/library'
import { createRandom } from '../../../src/shared/statistics/random'
import { shuffled } from '../../../src/shared/statistics/shuffled'
import { samplesOf, takeOf, tinyLibrary } from '../training/tiny-library'

let core: Core

beforeAll(async () => {
  core = await loadCoreForNode()
})

async function evaluate(full: FullLibrary, holdout: Holdout, seed = 1): Promise<Evaluation> {
  const evaluation = await evaluateLibrary(core, full, holdout, undefined, { seed })
  if (!evaluation.ok) throw new Error(evaluation.message)
  return evaluation.value
}

describe('an evaluation', () => {
  it.each(['tester', 'take'] as const)(
    'finds movements that differ, with %s held out',
    async (holdout) => {
      const { accuracy, confusion, outcomes, folds } = await evaluate(tinyLibrary(), holdout)
      expect(accuracy.n).toBe(36)
      expect(accuracy.value).toBeGreaterThan(0.85)
      expect(accuracy.low).toBeLessThan(accuracy.value)
      expect(confusion.map((row) => row.reduce((sum, n) => sum + n, 0))).toEqual([12, 12, 12])
      expect(outcomes.filter(({ answer, truth }) => answer === truth)).toHaveLength(accuracy.hits)
      expect(folds.reduce((sum, fold) => sum + fold.testTakes, 0)).toBe(36)
    },
  )

  it('of shuffled labels is no better than chance: nothing leaks from test to training', async () => {
    const full = tinyLibrary({ testers: 4, takesEach: 6 })
    const takes = full.recordings.map(({ recording }) => recording)
    const labels = takes.map((take) => (take.kind === 'take' ? take.gestureId : ''))
    for (const [i, label] of shuffled(labels, createRandom(8)).entries()) {
      const take = takes[i]
      if (take?.kind === 'take') take.gestureId = label
    }
    for (const holdout of ['tester', 'take'] as const) {
      const { outcomes } = await evaluate(full, holdout)
      // Rejected or not, the nearest gesture is right as often as one of three by luck.
      const right = outcomes.filter(({ event, truth }) => event?.gesture === truth).length
      expect(right / outcomes.length).toBeGreaterThan(1 / 3 - 0.17)
      expect(right / outcomes.length).toBeLessThan(1 / 3 + 0.17)
    }
  })

  it('is the same for the same seed', async () => {
    const [first, second] = [
      await evaluate(tinyLibrary(), 'take', 3),
      await evaluate(tinyLibrary(), 'take', 3),
    ]
    expect(second).toEqual(first)
  })

  it('counts a take without movement as missed and rejected', async () => {
    const full = tinyLibrary()
    full.recordings.push(takeOf('still', 'nod', 'T1', samplesOf([], createRandom(4))))
    const { outcomes, confusion } = await evaluate(full, 'tester')
    const still = outcomes.find(({ takeId }) => takeId === 'still')
    expect(still).toMatchObject({ cut: 'missed', answer: null, event: null, truth: 0 })
    expect(confusion[0]?.[3]).toBeGreaterThanOrEqual(1)
  })

  it('counts false activations in background with an exact interval', async () => {
    const { background } = await evaluate(tinyLibrary({ backgroundS: 60 }), 'tester')
    if (background === null) throw new Error('no background was counted')
    expect(background.hours * 3600).toBeGreaterThan(55)
    expect(background.segments).toBeGreaterThan(10)
    expect(background.activations).toBeLessThanOrEqual(background.segments)
    expect(background.perHour).toBeCloseTo(background.activations / background.hours, 9)
    // Garwood's upper limit for no event at all is 3.689 (check against R's poisson.test).
    if (background.activations === 0) {
      expect(background.high * background.hours).toBeCloseTo(3.688879, 5)
    }
  })

  it('has no false activations to tell without background', async () => {
    expect((await evaluate(tinyLibrary(), 'tester')).background).toBeNull()
  })
})

describe('an evaluation under way', () => {
  it('tells how far it is, and never goes back', async () => {
    const told: number[] = []
    await evaluateLibrary(core, tinyLibrary(), 'tester', ({ done, total }) => {
      told.push(done / total)
    })
    expect(told).toEqual([...told].sort((a, b) => a - b))
    expect(told.at(-1)).toBe(1)
  })

  it('stops between rounds when asked to', async () => {
    let asked = 0
    const stopped = await evaluateLibrary(core, tinyLibrary(), 'tester', undefined, {
      shouldStop: () => ++asked > 1,
    })
    expect(stopped).toMatchObject({ ok: false, code: 'parts/stopped' })
    expect(asked).toBe(2)
  })

  it('lets other work run between rounds', async () => {
    let paused = 0
    await evaluateLibrary(core, tinyLibrary(), 'tester', undefined, {
      pause: async () => {
        paused++
      },
    })
    expect(paused).toBe(3)
  })
})
