import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'
import { evaluateLibrary } from '../../../src/shared/evaluation/evaluate-library'
import type { FullLibrary, Recording } from '../../../src/shared/model/library'
import { notesOnData } from '../../../src/shared/training/data-notes'
import { prepareLibrary } from '../../../src/shared/training/prepare'
import { trainModel } from '../../../src/shared/training/train-model'
import { tinyLibrary } from './tiny-library'

let core: Core

beforeAll(async () => {
  core = await loadCoreForNode()
})

const notesOf = (full: FullLibrary) => notesOnData(prepareLibrary(full))

/** The library with the facts of some of its recordings changed. */
function changed(
  full: FullLibrary,
  choose: (recording: Recording, index: number) => boolean,
  change: (recording: Recording) => Recording,
): FullLibrary {
  return {
    ...full,
    recordings: full.recordings.map((item, index) =>
      choose(item.recording, index) ? { ...item, recording: change(item.recording) } : item,
    ),
  }
}

describe('notes on the recordings', () => {
  it('are silent where nothing is amiss', () => {
    expect(notesOf(tinyLibrary({ backgroundS: 70 }))).toEqual([])
  })

  it('say that one gesture alone cannot be confused', () => {
    const full = tinyLibrary()
    full.recordings = full.recordings.filter(
      ({ recording }) => recording.kind === 'take' && recording.gestureId === 'nod',
    )
    expect(notesOf(full)).toEqual([expect.stringMatching(/^Nod is the only gesture with takes/)])
  })

  it('count takes that are copies', () => {
    const full = tinyLibrary({ testers: 2, takesEach: 2 })
    const [first] = full.recordings
    if (first === undefined) throw new Error('no take')
    const copies = ['one', 'two'].map((id) => ({
      ...first,
      recording: { ...first.recording, id },
    }))
    full.recordings.push(...copies)
    expect(notesOf(full)).toEqual([expect.stringMatching(/^2 takes of 14 are copies of another/)])
  })

  it('name two gestures that hold the same take', () => {
    const full = tinyLibrary({ testers: 2, takesEach: 2 })
    const [first] = full.recordings
    if (first?.recording.kind !== 'take') throw new Error('no take')
    full.recordings.push({
      ...first,
      recording: { ...first.recording, id: 'x', gestureId: 'roll' },
    })
    expect(notesOf(full)[0]).toMatch(/^Nod and Roll share takes with the very same samples/)
  })

  it('count takes without a gyroscope, and say when none has one', () => {
    const without = (recording: Recording): Recording => ({
      ...recording,
      device: { ...recording.device, hasGyro: false },
    })
    const some = changed(tinyLibrary(), (_, index) => index < 5, without)
    expect(notesOf(some)).toEqual([expect.stringMatching(/^5 of 36 takes have no gyroscope/)])
    const all = changed(tinyLibrary(), () => true, without)
    expect(notesOf(all)).toEqual([expect.stringMatching(/^No take has gyroscope readings/)])
  })

  it('say up to which frequency takes at different rates agree', () => {
    const mixed = changed(
      tinyLibrary(),
      (_, index) => index < 6,
      (recording) => ({ ...recording, device: { ...recording.device, rateHz: 200 } }),
    )
    expect(notesOf(mixed)).toEqual([
      expect.stringMatching(/^Takes come at 60 to 200.Hz: what is faster than 30.Hz is in 6 of 36/),
    ])
  })

  it('bound the rate that 3 s of background allow (exact Poisson: 3.689 / 3 s)', () => {
    const [note] = notesOf(tinyLibrary({ backgroundS: 3 }))
    // Half the chi-square quantile 0.975 with two degrees of freedom is -ln 0.025 = 3.68888.
    const seconds = Number(note?.match(/lasts ([\d.]+)/)?.[1])
    const most = Number(note?.match(/up to ([\d]+) an hour/)?.[1])
    expect(most / ((3.68888 * 3600) / seconds)).toBeCloseTo(1, 1)
  })
})

describe('what can honestly be computed is computed', () => {
  it('from one gesture: a model, and takes held out', async () => {
    const full = tinyLibrary()
    full.recordings = full.recordings.filter(
      ({ recording }) => recording.kind === 'take' && recording.gestureId === 'nod',
    )
    expect(trainModel(core, full)).toMatchObject({ ok: true })
    const measured = await evaluateLibrary(core, full, 'tester')
    expect(measured).toMatchObject({ ok: true, value: { accuracy: { n: 12 } } })
  })

  it('from one take: a model with a note, and the reason why nothing can be held out', async () => {
    const full = tinyLibrary()
    full.recordings = full.recordings.slice(0, 1)
    const trained = trainModel(core, full)
    expect(trained).toMatchObject({ ok: true })
    if (trained.ok) expect(trained.value.notes.join()).toContain('Nod has 1 usable take')
    const measured = await evaluateLibrary(core, full, 'take')
    expect(measured).toMatchObject({ ok: false, code: 'evaluate/few-takes' })
  })

  it('from takes that are all alike: a model that names them', () => {
    const full = tinyLibrary({ testers: 2, takesEach: 2 })
    const [first] = full.recordings
    if (first === undefined) throw new Error('no take')
    full.recordings = full.recordings.map(({ recording }) => ({ ...first, recording }))
    const trained = trainModel(core, full)
    expect(trained).toMatchObject({ ok: true })
    if (trained.ok) expect(trained.value.notes.join()).toContain('the very same samples')
  })

  it('with a gesture that does not move: the others, and what to do about it', () => {
    const full = tinyLibrary()
    full.recordings = full.recordings.map((item) => {
      const { recording, samples } = item
      if (recording.kind !== 'take' || recording.gestureId !== 'roll') return item
      const still = samples.values.map((_, at) => samples.values[at % 6] ?? 0)
      return { recording, samples: { ...samples, values: still } }
    })
    const trained = trainModel(core, full)
    if (!trained.ok) throw new Error(trained.message)
    expect(trained.value.model.gestures.map(({ id }) => id)).toEqual(['nod', 'shake'])
    expect(trained.value.notes[0]).toMatch(/^No movement was found in the 12 takes of Roll/)
  })
})
