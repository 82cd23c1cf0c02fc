import 'fake-indexeddb/auto'
import './browser-globals'
import { signal } from '@preact/signals'
import { afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import { createSimulatedSource } from '../../src/sensors/simulated-source'
import { generateDemoLibrary } from '../../src/shared/demo/demo-library'
import type { TrainedModel } from '../../src/shared/model/evaluation'
import type { Library } from '../../src/shared/model/library'
import { ok, type Result } from '../../src/shared/model/result'
import { HAND_MARGIN_MS } from '../../src/shared/training/press'
import { Live } from '../../src/state/live'
import { createMotion } from '../../src/state/motion'
import type { Shelf } from '../../src/state/shelf'
import { createTeach } from '../../src/state/teach'
import { PlayedSource } from '../recording/played-source'
import { clientHere } from './app-bench'

let library: Library
let trained: Result<TrainedModel>

beforeAll(async () => {
  const demo = await generateDemoLibrary(1)
  const training = {
    ...demo.library.training,
    matcher: 'template' as const,
    segmentation: 'button' as const,
  }
  library = { ...demo.library, training }
  const takes = demo.recordings.filter(({ recording }) => recording.kind === 'take')
  trained = await clientHere().train({ library, recordings: takes.slice(0, 120) })
}, 60_000)

let source: PlayedSource
let live: Live
let teach: ReturnType<typeof createTeach>

beforeEach(() => {
  source = new PlayedSource()
  const motion = createMotion({ phone: source, simulated: createSimulatedSource(1) })
  const recogniser = clientHere()
  const train = async () => trained
  live = new Live({ recogniser, motion, library: () => library, train })
  const shelf = { current: signal(library) } as unknown as Shelf
  teach = createTeach({ shelf, motion, recogniser, train })
})

afterEach(() => live.stop())

async function perform(pressed: boolean): Promise<void> {
  await source.play(1500)
  if (pressed) live.press(true)
  await source.play(HAND_MARGIN_MS)
  source.hand.perform('ring')
  await source.play(1200 + HAND_MARGIN_MS)
  if (pressed) live.press(false)
  await source.play(500)
}

it('with a button, what moves while it is held is answered, and nothing else', async () => {
  expect(await live.start()).toEqual(ok(null))
  await perform(false)
  expect(live.events.value).toEqual([])
  await perform(true)
  await expect.poll(() => live.events.value.length).toBe(1)
  const { startMs, endMs } = live.events.value[0]!
  const heldMs = 1200 + 2 * HAND_MARGIN_MS
  expect(Math.abs(endMs - startMs - heldMs)).toBeLessThan(200)
  await perform(true)
  await expect.poll(() => live.events.value.length).toBe(2)
})

it('a press is forgotten with the run it was in', async () => {
  await live.start()
  await source.play(1000)
  live.press(true)
  await source.play(500)
  await live.stop()
  await live.start()
  await perform(false)
  expect(live.events.value).toEqual([])
})

it('teaching says that it listens for motion alone', async () => {
  expect(await teach.start({ gestureId: null, name: 'One more' })).toMatchObject({
    ok: false,
    code: 'teach/button',
  })
  expect(teach.running.value).toBe(false)
})
