import { expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { CoreEvent } from '../../../src/shared/core/core'
import { encodeModel } from '../../../src/shared/format/model-bytes'
import { decisionMarks } from '../../../src/shared/replay/marks'
import { replayRecording } from '../../../src/shared/replay/replay-recording'
import { createRandom } from '../../../src/shared/statistics/random'
import { trainModel } from '../../../src/shared/training/train-model'
import { samplesOf, tinyLibrary } from '../training/tiny-library'

const nod = { axis: 3, turns: 1, sizeDps: 250, durationS: 1 }

it('marks say where the core opened each segment and the very sample that brought its decision', async () => {
  const core = await loadCoreForNode()
  const full = tinyLibrary()
  const trained = trainModel(core, full)
  if (!trained.ok) throw new Error(trained.message)
  const { model } = trained.value
  // The second is longer than any in training: given up, and decided before its rest.
  const bursts = [nod, { ...nod, axis: 5, turns: 9, durationS: 9 }, { ...nod, axis: 4 }]
  const samples = samplesOf(bursts, createRandom(8))
  const replay = replayRecording(core, model, full.library.target, samples, 1)
  if (!replay.ok) throw new Error(replay.message)
  const { counts, events, energy, onThreshold } = replay.value
  expect(events.map(({ reason }) => reason)).toContain('long')

  core.load(encodeModel(model))
  const decidedAt: number[] = []
  const seen: CoreEvent[] = []
  for (let i = 0; i < counts.length / 6; i++) {
    const event = core.push(counts.subarray(6 * i, 6 * i + 6))[0]
    if (event === undefined) continue
    decidedAt.push(i)
    seen.push(event)
  }
  const marks = decisionMarks(replay.value)
  expect(seen).toEqual(events)
  expect(marks.map(({ decided }) => decided)).toEqual(decidedAt)
  for (const { armed, start, end } of marks) {
    expect(armed).toBeGreaterThanOrEqual(start)
    expect(armed).toBeLessThan(end)
    expect(energy[armed]).toBeGreaterThanOrEqual(onThreshold)
  }
})
