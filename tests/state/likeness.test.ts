import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import { compareTakes } from '../../src/shared/collect/compare-takes'
import type { WasmCore } from '../../src/shared/core/create-core'
import { DEMO_SEED, generateDemoLibrary } from '../../src/shared/demo/demo-library'
import type { FullLibrary, RecordingWithSamples, Take } from '../../src/shared/model/library'
import { Likeness } from '../../src/state/session/likeness'

type TakeWithSamples = RecordingWithSamples<Take>

describe('a take beside the tester’s others', () => {
  let core: WasmCore
  let full: FullLibrary

  beforeAll(async () => {
    core = await loadCoreForNode()
    full = await generateDemoLibrary(DEMO_SEED)
  }, 60_000)

  /** Takes of one gesture by the first tester who performed it. */
  function takesOf(name: string): TakeWithSamples[] {
    const gesture = full.library.gestures.find((one) => one.name === name)
    const takes = full.recordings.filter(
      (one): one is TakeWithSamples =>
        one.recording.kind === 'take' && one.recording.gestureId === gesture?.id,
    )
    const tester = takes[0]?.recording.testerCode
    return takes.filter(({ recording }) => recording.testerCode === tester)
  }

  function likeness(kept: TakeWithSamples[]): Likeness {
    const { library, recordings } = full
    const client = { compareTakes: async (some: FullLibrary) => compareTakes(core, some) }
    const store = {
      loadSamples: async (id: string) =>
        recordings.find(({ recording }) => recording.id === id)?.samples ?? null,
    }
    return new Likeness(
      { store, client, library },
      kept.map(({ recording }) => recording),
    )
  }

  it('is told when it is another movement than it is called', async () => {
    const [raises, sweeps] = [takesOf('Raise'), takesOf('Sweep')]
    const odd = sweeps[7]!
    const called = { ...odd.recording, gestureId: raises[0]!.recording.gestureId }
    const word = await likeness([...raises.slice(0, 6), ...sweeps.slice(0, 4)]).judge({
      recording: called,
      samples: odd.samples,
    })
    expect(word).toMatchObject({ code: 'unlike' })
    expect(word?.text).toMatch(/times as far from your others as is usual, and nearer to Sweep\.$/)
  }, 30_000)

  it('is let pass when it is like them', async () => {
    const [raises, sweeps] = [takesOf('Raise'), takesOf('Sweep')]
    const judge = likeness([...raises.slice(0, 6), ...sweeps.slice(0, 4)])
    for (const take of raises.slice(6)) expect(await judge.judge(take)).toBe(null)
  }, 30_000)

  it('is let pass while there are too few to say', async () => {
    const [raises, sweeps] = [takesOf('Raise'), takesOf('Sweep')]
    const odd = sweeps[7]!
    const called = { ...odd.recording, gestureId: raises[0]!.recording.gestureId }
    const judge = likeness(raises.slice(0, 3))
    expect(await judge.judge({ recording: called, samples: odd.samples })).toBe(null)
  })

  it('is not held against a take that was taken back', async () => {
    const raises = takesOf('Raise')
    const judge = likeness(raises.slice(0, 4))
    judge.remove(raises[0]!.recording.id)
    judge.add(raises[4]!)
    judge.remove(raises[4]!.recording.id)
    expect(await judge.judge(raises[5]!)).toBe(null)
  })
})
