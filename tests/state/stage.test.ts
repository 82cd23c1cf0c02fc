import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { SimulatedSource } from '../../src/sensors/simulated-source'
import { hitsOf, totalHits } from '../../src/shared/stage/tally'
import type { App } from '../../src/state/app'
import type { StageState } from '../../src/state/stage'
import { openApp } from './app-bench'

let app: App
let stage: StageState
let name = ''
let count = 0

beforeEach(async () => {
  count += 1
  name = `stage-${count}`
  app = await openApp(name)
  await app.library.addDemo()
  app.motion.use('simulated')
  stage = await app.openStage()
})
afterEach(() => {
  stage.leave()
  app.motion.source().stop()
})

const source = () => app.motion.source() as SimulatedSource
const ids = () => app.library.current.value?.gestures.map(({ id }) => id) ?? []
const until = (is: () => boolean) => vi.waitUntil(is, { timeout: 15_000 })

async function begin(cards: boolean): Promise<void> {
  stage.begin(cards)
  await until(() => stage.show.value.phase === 'on')
}

/** Performs until the recogniser has answered; a generated hand is missed now and then. */
async function performUntilHit(movement: string): Promise<string> {
  const before = stage.tally.value
  for (let attempt = 0; attempt < 8; attempt++) {
    const seen = app.live.events.value[0]
    await new Promise((resolve) => setTimeout(resolve, 700))
    source().perform(movement)
    await until(() => app.live.events.value[0] !== seen)
    const hit = ids().find((id) => hitsOf(stage.tally.value, id) > hitsOf(before, id))
    if (hit !== undefined) return hit
  }
  throw new Error(`${movement} was not recognised in eight tries`)
}

test('a recognised movement is counted, kept for the evening, and the count can be taken back', async () => {
  await begin(false)
  expect(stage.turn.value).toBeNull()
  const hit = await performUntilHit('ring')
  const total = totalHits(stage.tally.value)
  expect(total).toBeGreaterThan(0)

  const kept = localStorage.getItem('movewright.stage-tally') ?? ''
  const entries = JSON.parse(kept) as [string, Record<string, unknown>][]
  const own = entries.find(([id]) => id === app.library.current.value?.id)?.[1]
  expect(Object.keys(own ?? {}).sort()).toEqual(['asked', 'hits', 'right', 'sinceAt'])
  expect(own?.hits).toMatchObject({ [hit]: hitsOf(stage.tally.value, hit) })

  stage.resetTally()
  expect(totalHits(stage.tally.value)).toBe(0)
  await app.undoable.value[0]?.undo?.()
  expect(totalHits(stage.tally.value)).toBe(total)
})

test('a sensor that falls silent is waited for, and the show goes on by itself', async () => {
  await begin(false)
  source().stop()
  expect(stage.show.value).toMatchObject({ phase: 'mending', gone: 'sensor' })
  await until(() => stage.show.value.phase === 'on')
  expect(app.live.running.value).toBe(true)
  await performUntilHit('ring')
})

test('leaving while it starts leaves nothing running', async () => {
  stage.begin(false)
  stage.leave()
  await app.train()
  await until(() => !app.live.running.value)
  await new Promise((resolve) => setTimeout(resolve, 500))
  expect(stage.show.value.phase).toBe('off')
  expect(app.live.running.value).toBe(false)
})

test('without permission it does not begin, and says why', async () => {
  app.motion.use('phone')
  stage.begin(false)
  await until(() => stage.show.value.phase === 'off')
  expect(stage.show.value).toMatchObject({ why: expect.stringContaining('HTTPS') })
})

test('cards ask for one movement after the other and count the turns', async () => {
  await begin(true)
  const [first, second] = ids()
  expect(stage.turn.value).toMatchObject({ step: 'card', asked: first })
  stage.nextCard()
  expect(stage.turn.value).toMatchObject({ step: 'card', asked: second })
  stage.ready()
  expect(stage.turn.value).toMatchObject({ step: 'count' })
  await until(() => stage.turn.value?.step === 'now')
  source().perform('ring')
  await until(() => stage.turn.value?.step === 'told')
  expect(stage.tally.value.asked).toBe(1)
})
