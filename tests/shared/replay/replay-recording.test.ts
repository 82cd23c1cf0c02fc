import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core, CoreEvent } from '../../../src/shared/core/core'
import type { TrainedModel } from '../../../src/shared/model/evaluation'
import { replayRecording } from '../../../src/shared/replay/replay-recording'
import { createRandom } from '../../../src/shared/statistics/random'
import { trainModel } from '../../../src/shared/training/train-model'
import { samplesOf, tinyLibrary } from '../training/tiny-library'

const full = tinyLibrary()
let core: Core
let trained: TrainedModel

beforeAll(async () => {
  core = await loadCoreForNode()
  const result = trainModel(core, full)
  if (!result.ok) throw new Error(result.message)
  trained = result.value
})

const nod = { axis: 3, turns: 1, sizeDps: 250, durationS: 1 }

function replay(bursts: (typeof nod)[], model = trained.model) {
  return replayRecording(core, model, full.library.target, samplesOf(bursts, createRandom(6)), 1)
}

describe('a replay', () => {
  it('shows each movement with its decision, and energy and phase at every sample', () => {
    const result = replay([nod, { ...nod, axis: 5, turns: 2 }])
    if (!result.ok) throw new Error(result.message)
    const { events, counts, energy, phase, onThreshold } = result.value
    const names = events.map(({ gesture }) => trained.model.gestures[gesture ?? -1]?.name)
    expect(names).toEqual(['Nod', 'Shake'])
    expect(energy).toHaveLength(counts.length / 6)
    expect(phase).toHaveLength(counts.length / 6)
    for (const { start, end } of events) {
      expect(Math.max(...energy.subarray(start, end))).toBeGreaterThanOrEqual(onThreshold)
      expect(phase.subarray(start, end)).toContain(1)
    }
  })

  it('gives for each movement the distance to every gesture, the least being the decision', () => {
    const result = replay([nod])
    if (!result.ok) throw new Error(result.message)
    const [event] = result.value.events
    const [distances] = result.value.gestureDistances
    expect(distances).toHaveLength(3)
    expect(Math.min(...(distances ?? []))).toBe(event?.distance)
    expect(distances?.[event?.runnerUp ?? -1]).toBe(event?.runnerUpDistance)
  })

  it('holds the button from before the first motion to after the last where the model has one', () => {
    const result = replay([nod], { ...trained.model, button: true })
    if (!result.ok) throw new Error(result.message)
    const { events, energy, onThreshold } = result.value
    expect(events).toHaveLength(1)
    const [{ start, end }] = events as [CoreEvent]
    const moving = [...energy.keys()].filter((at) => energy[at]! >= onThreshold)
    expect(start).toBeLessThan(moving[0]!)
    expect(start).toBeGreaterThan(moving[0]! - 40)
    expect(end).toBeGreaterThan(moving.at(-1)!)
    expect(end).toBeLessThan(moving.at(-1)! + 40)
  })

  it('presses nothing in a background', () => {
    const samples = samplesOf([nod], createRandom(6))
    const model = { ...trained.model, button: true }
    const result = replayRecording(core, model, full.library.target, samples, 1, 'background')
    expect(result.ok && result.value.events).toEqual([])
  })

  it('refuses a model that the core refuses', () => {
    const result = replay([nod], { ...trained.model, band: 200 })
    expect(result).toMatchObject({ ok: false, code: 'replay/model' })
  })
})
