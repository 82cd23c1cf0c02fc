import type {
  AnyJob,
  Found,
  FoundSession,
  TakeMark,
  Word,
} from '../../../src/build/bench/kills/words'
import type { RecogniserClient } from '../../../src/recogniser/client'
import { recovered } from '../../../src/recording/facts'
import { Recorder } from '../../../src/recording/recorder'
import { LEAD_IN_MS } from '../../../src/recording/timing'
import { createSimulatedSource } from '../../../src/sensors/simulated-source'
import { fail } from '../../../src/shared/model/result'
import type { SampleBlock } from '../../../src/shared/model/sample'
import { createRandom, type Random } from '../../../src/shared/statistics/random'
import { SCHEMA_STEPS } from '../../../src/storage/migrations'
import { openStore } from '../../../src/storage/open-store'
import type { Store } from '../../../src/storage/store'
import { exampleLibrary, exampleSamples, exampleTake } from '../../storage/examples'
import { findSessions, performSessions, promising, type SessionPage } from './kills-session'

/*
 * Works like the app on the app's own storage and recorder, and says every promise that the app
 * would show, so that whoever kills the browser knows what must be found afterwards.
 */

declare global {
  interface Window {
    /** Put in by whoever drives the browser. */
    tell(word: string): void
    kills: typeof kills
  }
}

const tell = (word: Word) => window.tell(JSON.stringify(word))
/** Every call fails, as where the worker does not start: recording and sessions go on without it. */
const noRecogniser = new Proxy({} as RecogniserClient, {
  get: () => async () => fail('worker/crashed', 'There is no recogniser on this page.'),
})
const OLD = /^old-/
const library = exampleLibrary()
let store: Store

/** FNV-1a over the bytes of all numbers. */
function hashOf({ tMs, values }: SampleBlock): number {
  let hash = 0x811c9dc5
  for (const { buffer, byteOffset, byteLength } of [tMs, values]) {
    for (const byte of new Uint8Array(buffer, byteOffset, byteLength)) {
      hash = Math.imul(hash ^ byte, 0x01000193)
    }
  }
  return hash >>> 0
}

const markOf = (id: string, samples: SampleBlock): TakeMark => ({
  id,
  samples: samples.tMs.length,
  hash: hashOf(samples),
})

async function takesIn(from: Store): Promise<Found['takes']> {
  const libraries = await from.listLibraries()
  const fulls = await Promise.all(libraries.map(({ id }) => from.loadFull(id)))
  return fulls.flatMap((full) =>
    (full?.recordings ?? []).map(({ recording, samples }) => ({
      ...markOf(recording.id, samples),
      label: Number(recording.testerCode.replace(/\D/g, '')),
    })),
  )
}

/** Databases that were being brought to the present version; opening them does it. */
async function takesOfOld(): Promise<Found['takes']> {
  const found: Found['takes'] = []
  for (const { name = '' } of await indexedDB.databases()) {
    if (!OLD.test(name)) continue
    const old = await openStore(name)
    found.push(...(await takesIn(old)))
    old.close()
  }
  return found
}

function randomTakes(random: Random, libraryId: string, count: number) {
  return Array.from({ length: count }, () => {
    const id = crypto.randomUUID()
    const recording = exampleTake({ id, libraryId })
    return { recording, samples: exampleSamples(60 + random.integer(240), random.integer(1000)) }
  })
}

const told = (items: ReturnType<typeof randomTakes>): Word => ({
  is: 'stored',
  takes: items.map(({ recording, samples }) => markOf(recording.id, samples)),
})

/** Takes and background one after another, by the simulated hand. */
async function record(random: Random): Promise<void> {
  const source = createSimulatedSource(random.nextUint32())
  let id = ''
  let originMs: number | null = null
  const times: number[] = []
  const recorder = new Recorder({
    store,
    client: noRecogniser,
    newId: () => id,
    deviceLabel: 'test',
    events: {
      onPhase: () => {},
      onOffered: ([offer]) => {
        if (offer !== undefined) stored = markOf(offer.recording.id, offer.samples)
      },
      onStored: () => {},
      onHeldBack: () => {},
      onIgnored: () => {},
      onTrouble: (failure) => {
        throw new Error(failure.message)
      },
    },
  })
  let stored: TakeMark | null = null
  await recorder.use(source)
  source.subscribe(({ tMs }) => {
    times.push(tMs)
    if (originMs !== null) tell({ is: 'sample', id, tMs: tMs - originMs })
  })
  await source.start()
  const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))
  await wait(60)
  tell({ is: 'working' })
  const setup = { libraryId: library.id, testerCode: 'A', hand: 'right', target: library.target }
  for (;;) {
    id = crypto.randomUUID()
    const fromMs = times.at(-1)! - LEAD_IN_MS
    originMs = times.find((tMs) => tMs >= fromMs)!
    await recorder.beginHold(setup as never, 'raise')
    await wait(random.uniform(200, 3000))
    await recorder.endHold()
    originMs = null
    if ((await recorder.keep()).ok && stored !== null) tell({ is: 'stored', takes: [stored] })
  }
}

/** Later labels have greater numbers, over all starts. */
let lastLabel = Date.now() * 1000

async function label(random: Random): Promise<void> {
  if ((await store.listRecordings(library.id)).length < 8) {
    const items = randomTakes(random, library.id, 8)
    if ((await store.addRecordings(items)).ok) tell(told(items))
  }
  const recordings = await store.listRecordings(library.id)
  tell({ is: 'working' })
  for (;;) {
    const recording = recordings[random.integer(recordings.length)]!
    lastLabel += 1
    const label = lastLabel
    const changed = await store.updateRecording({ ...recording, testerCode: `T${label}` })
    if (changed.ok) tell({ is: 'labelled', id: recording.id, label })
  }
}

/** Whole libraries, takes into one that is there, and merges that change it: all or nothing. */
async function merge(random: Random): Promise<void> {
  tell({ is: 'working' })
  for (;;) {
    const way = random.integer(3)
    const libraryId = way === 0 ? crypto.randomUUID() : library.id
    const items = randomTakes(random, libraryId, 3 + random.integer(8))
    tell({ is: 'adding', ids: items.map(({ recording }) => recording.id) })
    const ways = [
      () =>
        store.addFullLibrary({
          library: exampleLibrary({ id: libraryId, name: libraryId }),
          recordings: items,
        }),
      () => store.addRecordings(items),
      () =>
        store.changeLibrary({
          library: exampleLibrary({ name: `Merged ${random.integer(1000)}` }),
          add: items,
          update: [],
          remove: [],
          restore: [],
        }),
    ]
    const added = await ways[way]!()
    if (added.ok) tell(told(items))
  }
}

/** Databases of every older version, opened by this one. */
async function migrate(random: Random): Promise<void> {
  const names = Array.from({ length: 5 }, () => `old-${crypto.randomUUID()}`)
  for (const [i, name] of names.entries()) {
    const version = 1 + (i % Math.max(1, SCHEMA_STEPS.length - 1))
    const old = await openStore(name, { steps: SCHEMA_STEPS.slice(0, version) })
    const items = randomTakes(random, name, 3)
    const added = await old.addFullLibrary({
      library: exampleLibrary({ id: name, name }),
      recordings: items,
    })
    old.close()
    if (added.ok) tell(told(items))
  }
  tell({ is: 'working' })
  for (const name of names) (await openStore(name)).close()
}

/** Promises first and writes when there is time: what must not be, to see that it is counted. */
async function careless(random: Random): Promise<void> {
  const items = randomTakes(random, library.id, 1)
  tell({ is: 'working' })
  tell(told(items))
  const id = crypto.randomUUID()
  const beganMs = performance.now()
  // Samples in memory until the end, with no journal.
  setInterval(() => tell({ is: 'sample', id, tMs: performance.now() - beganMs }), 17)
  setTimeout(() => void store.addRecordings(items), 60_000)
}

const sessionPage = (): SessionPage => ({ store, recogniser: noRecogniser, tell, markOf })

/** A session over a store that promises: told only once there is something to lose. */
function carelessSession(random: Random): Promise<void> {
  let isLate = false
  const tellLate = (word: Word) => {
    if (word.is === 'working') return
    tell(word)
    if (word.is !== 'stands' || word.session.kept.length === 0 || isLate) return
    isLate = true
    tell({ is: 'working' })
  }
  const page = { ...sessionPage(), store: promising(store), tell: tellLate, isSteady: true }
  return performSessions(page, random)
}

const JOBS: Record<AnyJob, (random: Random) => Promise<void>> = {
  recording: record,
  labelling: label,
  merging: merge,
  migrating: migrate,
  session: (random) => performSessions(sessionPage(), random),
  careless,
  'careless-session': carelessSession,
}

const kills = {
  /** What was cut off is kept, as a person would. What becomes of a session's is its own affair. */
  async keep(): Promise<void> {
    for (const item of await store.unfinished()) {
      if (item.recording.sessionId !== undefined) continue
      const kept = await store.finishUnfinished(item.recording.id, recovered(item))
      if (kept.ok) tell({ is: 'stored', takes: [markOf(kept.value.id, item.samples)] })
    }
  },
  sessions: (): Promise<FoundSession[]> => findSessions(sessionPage()),
  start: (job: AnyJob, seed: number) => void JOBS[job](createRandom(seed)),
  async look(): Promise<Found> {
    const unfinished = await store.unfinished()
    const takes = [...(await takesIn(store)), ...(await takesOfOld())]
    return {
      takes,
      unfinished: unfinished.map(({ recording, samples }) => ({
        id: recording.id,
        lastMs: samples.tMs.at(-1) ?? 0,
      })),
    }
  },
}

async function prepare(): Promise<void> {
  store = await openStore()
  const stored = await store.listLibraries()
  if (!stored.some(({ id }) => id === library.id)) await store.putLibrary(library)
  window.kills = kills
  tell({ is: 'ready' })
}

void prepare()
