import 'fake-indexeddb/auto'
import './browser-globals'
import { signal } from '@preact/signals'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { createSimulatedSource } from '../../src/sensors/simulated-source'
import { generateDemoLibrary } from '../../src/shared/demo/demo-library'
import type { TrainedModel } from '../../src/shared/model/evaluation'
import type { FullLibrary } from '../../src/shared/model/library'
import { ok, type Result } from '../../src/shared/model/result'
import { Live } from '../../src/state/live'
import { createMotion } from '../../src/state/motion'
import type { Shelf } from '../../src/state/shelf'
import { createStageState } from '../../src/state/stage'
import { createTeach } from '../../src/state/teach'
import { PlayedSource } from '../recording/played-source'
import { clientHere } from './app-bench'

/** A source that knows how many listen to it. */
class CountedSource extends PlayedSource {
  listeners = 0
  override subscribe: PlayedSource['subscribe'] = (listener) => {
    this.listeners += 1
    const leave = this.hub.subscribe(listener)
    return () => {
      this.listeners -= 1
      leave()
    }
  }
}

/** Waits that a start goes through, in their order. */
const WAITS = ['sensor', 'training', 'worker'] as const
type Wait = (typeof WAITS)[number]

let full: FullLibrary
let trained: Result<TrainedModel>

beforeAll(async () => {
  const demo = await generateDemoLibrary(1)
  const gestures = demo.library.gestures.slice(2, 5)
  const isOf = ({ recording: one }: FullLibrary['recordings'][number]) =>
    one.kind === 'take' && gestures.some(({ id }) => id === one.gestureId)
  const training = { ...demo.library.training, matcher: 'template' as const }
  full = {
    library: { ...demo.library, gestures, training },
    recordings: demo.recordings.filter(isOf).slice(0, 60),
  }
  trained = await clientHere().train(full)
}, 60_000)

/** Live and teaching over a real worker's service; a start can be held in each of its waits. */
function bench() {
  const client = clientHere()
  const source = new CountedSource()
  const held = new Map<Wait, { reached: () => void; opened: Promise<void> }>()
  const during = async <T>(wait: Wait, work: () => Promise<T>): Promise<T> => {
    const result = await work()
    const gate = held.get(wait)
    held.delete(wait)
    gate?.reached()
    await gate?.opened
    return result
  }
  /** Holds the next start there. @returns when it has come there, and what lets it go on */
  const hold = (wait: Wait) => {
    let open = () => {}
    const opened = new Promise<void>((resolve) => {
      open = resolve
    })
    const reached = new Promise<void>((resolve) => held.set(wait, { reached: resolve, opened }))
    return { reached, open }
  }
  const motion = createMotion({ phone: source, simulated: createSimulatedSource(1) })
  const { start } = motion
  motion.start = () => during('sensor', start)
  const library = signal<typeof full.library | null>(full.library)
  const recogniser: typeof client = {
    ...client,
    openLive: (...given) => during('worker', () => client.openLive(...given)),
    openTeach: (...given) => during('worker', () => client.openTeach(...given)),
  }
  const train = () => during('training', async () => trained)
  const live = new Live({ recogniser, motion, library: () => library.value, train })
  const shelf = { current: library } as unknown as Shelf
  const teach = createTeach({ shelf, motion, recogniser, train })
  return { client, source, motion, library, live, teach, hold }
}

let at: ReturnType<typeof bench>
beforeEach(() => {
  at = bench()
})

const WISH = { gestureId: null, name: 'One more' }

describe.each(WAITS)('held while it waits for the %s, a start', (wait) => {
  it('of live recognition that is left does not run, and lets go of everything', async () => {
    const held = at.hold(wait)
    const starting = at.live.start()
    await held.reached
    await at.live.stop()
    held.open()
    expect(await starting).toMatchObject({ ok: false, code: 'live/stopped' })
    expect([at.live.running.value, at.live.trouble.value]).toEqual([false, null])
    expect(at.source.listeners).toBe(0)
  })

  it('of live recognition that is overtaken leaves the newer one alone', async () => {
    const held = at.hold(wait)
    const first = at.live.start()
    await held.reached
    expect(await at.live.start()).toEqual(ok(null))
    held.open()
    expect(await first).toMatchObject({ ok: false, code: 'live/stopped' })
    expect([at.live.running.value, at.source.listeners]).toEqual([true, 1])
    await at.live.stop()
    expect(at.source.listeners).toBe(0)
  })

  it('of live recognition ends when another library is opened', async () => {
    const held = at.hold(wait)
    const starting = at.live.start()
    await held.reached
    at.library.value = { ...full.library, id: 'another' }
    held.open()
    expect(await starting).toMatchObject({ ok: false, code: 'live/stopped' })
    expect([at.live.running.value, at.source.listeners]).toEqual([false, 0])
  })

  it('of teaching that is left does not run, and lets go of everything', async () => {
    const held = at.hold(wait)
    const starting = at.teach.start(WISH)
    await held.reached
    await at.teach.leave()
    held.open()
    expect(await starting).toMatchObject({ ok: false, code: 'teach/stopped' })
    expect([at.teach.running.value, at.teach.trouble.value]).toEqual([false, null])
    expect(at.source.listeners).toBe(0)
  })

  it('of teaching that is overtaken leaves the newer one alone', async () => {
    const held = at.hold(wait)
    const first = at.teach.start(WISH)
    await held.reached
    expect(await at.teach.start({ ...WISH, name: 'Another' })).toEqual(ok(null))
    held.open()
    expect(await first).toMatchObject({ ok: false, code: 'teach/stopped' })
    expect([at.teach.running.value, at.source.listeners]).toEqual([true, 1])
    expect(at.teach.wish.value?.name).toBe('Another')
    await at.teach.leave()
    expect(at.source.listeners).toBe(0)
  })

  it('of a show that was left and begun again ends in one show', async () => {
    const { live, motion, library } = at
    const model = signal({ state: 'none' as const })
    const notices = { say: () => undefined }
    const stage = createStageState({ live, motionStatus: motion.status, model, library, notices })
    const held = at.hold(wait)
    stage.begin(false)
    await held.reached
    stage.leave()
    stage.begin(false)
    await expect.poll(() => stage.show.value.phase).toBe('on')
    held.open()
    await at.source.play(500)
    expect([stage.show.value.phase, live.running.value]).toEqual(['on', true])
    expect(at.source.listeners).toBe(1)
    stage.leave()
    expect([live.running.value, at.source.listeners]).toEqual([false, 0])
  })
})

it('what listens in the same worker after a start was left is not closed by it', async () => {
  const held = at.hold('worker')
  const starting = at.live.start()
  await held.reached
  await at.live.stop()
  if (!trained.ok) throw new Error(trained.message)
  const { model } = trained.value
  await at.client.openLive(model, full.library.target, 1)
  held.open()
  await starting
  const block = { tMs: Float64Array.of(0, 17), values: new Float32Array(12) }
  expect(await at.client.pushLive(block)).toMatchObject({ ok: true })
})
