import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../../src/build/load-core'
import type { WasmCore } from '../../../../src/shared/core/create-core'
import { generateDemoLibrary } from '../../../../src/shared/demo/demo-library'
import { evaluateLibrary } from '../../../../src/shared/evaluation/evaluate-library'
import { decodeModel } from '../../../../src/shared/format/model-bytes'
import type { FullLibrary } from '../../../../src/shared/model/library'
import { matcherKind } from '../../../../src/shared/model/recogniser-model'
import { trainModel } from '../../../../src/shared/training/train-model'

let core: WasmCore
let full: FullLibrary
beforeAll(async () => {
  core = await loadCoreForNode()
  full = await generateDemoLibrary(2)
  full.library.target.modelBudgetBytes = 16384
}, 60_000)

/** The recordings of some testers. */
function someTesters(count: number): FullLibrary {
  const codes = [...new Set(full.recordings.map(({ recording }) => recording.testerCode))].sort()
  const kept = codes.slice(0, count)
  return {
    ...full,
    recordings: full.recordings.filter(({ recording }) => kept.includes(recording.testerCode)),
  }
}

describe('training kernel features', () => {
  it('keeps within the budget and gives the same bytes each time', () => {
    for (const matcher of ['kernel', 'auto'] as const) {
      const some = someTesters(4)
      const trained = trainModel(core, some, { matcher })
      if (!trained.ok) throw new Error(trained.message)
      const { model, bytes, tableBytes } = trained.value
      expect(tableBytes).toBeLessThanOrEqual(16384)
      expect(decodeModel(bytes, model.gestures)).toEqual({ ok: true, value: model })
      expect(trainModel(core, some, { matcher })).toEqual(trained)
      if (matcher === 'kernel') expect(matcherKind(model)).toBe('kernel')
    }
  }, 60_000)

  it('falls back to templates where a gesture has too few takes for a regression', () => {
    const few = someTesters(1)
    const seen = new Map<string, number>()
    few.recordings = few.recordings.filter(({ recording }) => {
      if (recording.kind !== 'take') return true
      const count = (seen.get(recording.gestureId) ?? 0) + 1
      seen.set(recording.gestureId, count)
      return count <= 2
    })
    const trained = trainModel(core, few, { matcher: 'kernel' })
    expect(trained.ok && matcherKind(trained.value.model)).toBe('template')
  }, 60_000)

  it('names testers it has not met as well as templates do, within its interval', async () => {
    const some = someTesters(5)
    const hits = async (matcher: 'template' | 'kernel') => {
      const evaluation = await evaluateLibrary(core, some, 'tester', undefined, { matcher })
      if (!evaluation.ok) throw new Error(evaluation.message)
      return evaluation.value.accuracy
    }
    const [template, kernel] = [await hits('template'), await hits('kernel')]
    expect(kernel.n).toBe(template.n)
    expect(kernel.high).toBeGreaterThanOrEqual(template.value)
  }, 120_000)
})
