import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'
import type { TrainedModel } from '../../../src/shared/model/evaluation'
import type { FullLibrary } from '../../../src/shared/model/library'
import { createRandom } from '../../../src/shared/statistics/random'
import { cutTake } from '../../../src/shared/training/cut-take'
import { prepareLibrary } from '../../../src/shared/training/prepare'
import { runStream } from '../../../src/shared/training/stream'
import { trainModel } from '../../../src/shared/training/train-model'
import { backgroundOf, samplesOf, takeOf, tinyLibrary } from './tiny-library'

let core: Core

beforeAll(async () => {
  core = await loadCoreForNode()
})

function train(full: FullLibrary): TrainedModel {
  const trained = trainModel(core, full)
  if (!trained.ok) throw new Error(trained.message)
  return trained.value
}

describe('a trained model', () => {
  it('is accepted by the core and names the takes it was trained on', () => {
    const full = tinyLibrary()
    const { model, bytes } = train(full)
    const { takes, gestures } = prepareLibrary(full)
    core.load(bytes)
    for (const take of takes) {
      const { cut, movement } = cutTake(core, take, model)
      expect(cut).toBe('ok')
      expect(movement?.event.kind).toBe('gesture')
      expect(model.gestures[movement?.event.gesture ?? -1]?.id).toBe(gestures[take.gesture]?.id)
    }
  })

  it('is the same to the byte for the same library', () => {
    const [first, second] = [train(tinyLibrary()), train(tinyLibrary())]
    expect(first.hash).toBe(second.hash)
    expect(train(tinyLibrary({ seed: 2 })).hash).not.toBe(first.hash)
  })

  it('takes its templates from takes it used, each gesture from its own', () => {
    const full = tinyLibrary()
    const { model, usedTakeIds } = train(full)
    for (const { id, templateTakeIds, templates } of model.gestures) {
      expect(templateTakeIds).toHaveLength(templates.length)
      for (const takeId of templateTakeIds) {
        expect(usedTakeIds).toContain(takeId)
        expect(takeId.startsWith(`${id}-`)).toBe(true)
      }
    }
  })

  it('rejects movements that are none of its gestures', () => {
    const { model, bytes } = train(tinyLibrary({ backgroundS: 60 }))
    const strange = samplesOf(
      [3, 4, 5, 3, 4, 5].map((axis) => ({ axis, turns: 7, sizeDps: 300, durationS: 1.1 })),
      createRandom(99),
    )
    const full = tinyLibrary({ takesEach: 1 })
    full.recordings = [backgroundOf('strange', 'T9', strange)]
    const [background] = prepareLibrary(full).backgrounds
    core.load(bytes)
    const movements = runStream(core, background?.counts ?? new Int16Array(0), model.segmenter)
    expect(movements.length).toBeGreaterThan(0)
    expect(movements.map(({ event }) => event.kind)).not.toContain('gesture')
  })

  it('keeps to the budget in bytes and to the templates a gesture may have', () => {
    const full = tinyLibrary({ takesEach: 6 })
    full.library.target.modelBudgetBytes = 1100
    full.library.training.templatesPerGesture = 3
    const { model, bytes, tableBytes } = train(full)
    expect(bytes.length).toBeLessThanOrEqual(1100)
    expect(tableBytes).toBe(bytes.length)
    for (const { templates } of model.gestures) expect(templates.length).toBeLessThanOrEqual(3)
  })

  it('makes thresholds larger with the factor of the settings', () => {
    const generous = tinyLibrary()
    generous.library.training.thresholdFactor = 1.5
    const [plain, larger] = [train(tinyLibrary()).model, train(generous).model]
    for (const [i, gesture] of plain.gestures.entries()) {
      expect(larger.gestures[i]?.threshold).toBeCloseTo(1.5 * gesture.threshold, -1)
    }
  })

  it('leaves out a gesture without takes and deleted takes, and says so', () => {
    const full = tinyLibrary()
    full.library.gestures.push({ id: 'bow', name: 'Bow', note: '' })
    const first = full.recordings[0]?.recording
    if (first === undefined) throw new Error('the library is empty')
    first.deletedAt = '2025-02-01T00:00:00Z'
    const { model, usedTakeIds, notes } = train(full)
    expect(model.gestures.map(({ id }) => id)).not.toContain('bow')
    expect(notes.some((note) => note.startsWith('Bow has no takes'))).toBe(true)
    expect(usedTakeIds).not.toContain(first.id)
  })

  it('learns from segments that a button marks, with no background counted against it', () => {
    const full = tinyLibrary({ backgroundS: 20 })
    full.library.training.segmentation = 'button'
    const { model, uncutTakeIds } = train(full)
    expect(model.button).toBe(true)
    expect(uncutTakeIds).toEqual([])
  })
})

describe('training that cannot be done', () => {
  it('says that takes are missing', () => {
    const full = tinyLibrary()
    full.recordings = []
    expect(trainModel(core, full)).toMatchObject({ ok: false, code: 'train/no-takes' })
  })

  it('says that nothing moved', () => {
    const full = tinyLibrary()
    full.recordings = [takeOf('still', 'nod', 'T0', samplesOf([], createRandom(1)))]
    expect(trainModel(core, full)).toMatchObject({ ok: false, code: 'train/no-movement' })
  })

  it('says that the budget is too small for one template a gesture', () => {
    const full = tinyLibrary()
    full.library.target.modelBudgetBytes = 400
    expect(trainModel(core, full)).toMatchObject({ ok: false, code: 'train/budget' })
  })
})

describe('the cut of a take', () => {
  const nod = { axis: 3, turns: 1, sizeDps: 250, durationS: 1 }
  const cutOf = (
    bursts: (typeof nod)[],
    trim: { startMs: number; endMs: number } | null = null,
  ) => {
    const full = tinyLibrary()
    const { model, bytes } = train(full)
    const taken = takeOf('tried', 'nod', 'T0', samplesOf(bursts, createRandom(3)))
    taken.recording.trim = trim
    const [take] = prepareLibrary({ ...full, recordings: [taken] }).takes
    core.load(bytes)
    if (take === undefined) throw new Error('the take was not prepared')
    return cutTake(core, take, model)
  }

  it('is missed when nothing moved', () => {
    expect(cutOf([])).toEqual({ cut: 'missed', movement: null })
  })

  it('is split when there are two movements, and the longer one counts', () => {
    const { cut, movement } = cutOf([nod, { ...nod, durationS: 1.3 }])
    expect(cut).toBe('split')
    expect((movement?.event.start ?? 0) / 52).toBeGreaterThan(2)
  })

  it('is one movement when the other lies outside the trim', () => {
    const { cut, movement } = cutOf([nod, nod], { startMs: 0, endMs: 2200 })
    expect(cut).toBe('ok')
    expect((movement?.event.end ?? 0) / 52).toBeLessThan(2.2)
  })

  it('is too long when the movement goes on beyond the longest segment', () => {
    expect(cutOf([{ ...nod, turns: 40, durationS: 12 }]).cut).toBe('long')
  })
})
