import { openDB } from 'idb'
import { Capture } from '../../../src/recording/capture'
import { completed } from '../../../src/recording/facts'
import type { Failure, Result } from '../../../src/shared/model/result'
import { SCHEMA_STEPS } from '../../../src/storage/migrations'
import { openStore } from '../../../src/storage/open-store'
import type { Store } from '../../../src/storage/store'
import { PlayedSource } from '../../recording/played-source'
import { exampleLibrary, exampleSamples, exampleTake } from '../../storage/examples'

/*
 * Storage and recording with faults put in at exactly the n-th write, and the same writes without
 * what guards them.
 */

type Fault = 'full' | 'aborted'

/** What happens to write number `at`, counted from the call of `failAt`, and after it. */
const plan = { fault: 'full' as Fault, at: 0, count: 0, fired: false }

function meddle(method: 'add' | 'put'): void {
  const original = IDBObjectStore.prototype[method]
  IDBObjectStore.prototype[method] = function (this: IDBObjectStore, ...args) {
    plan.count += 1
    const isFull = plan.fault === 'full' && plan.at > 0 && plan.count >= plan.at
    if (isFull) {
      plan.fired = true
      throw new DOMException('put in by the test', 'QuotaExceededError')
    }
    const request = original.apply(this, args)
    if (plan.fault === 'aborted' && plan.count === plan.at) {
      plan.fired = true
      this.transaction.abort()
    }
    return request
  }
}
meddle('add')
meddle('put')

const source = new PlayedSource()
const library = exampleLibrary()
const params = new URLSearchParams(location.search)
const steps = SCHEMA_STEPS.slice(0, Number(params.get('steps') ?? SCHEMA_STEPS.length))
let store: Store
let lastId = 0

const bench = {
  library,
  news: [] as string[],
  troubles: [] as string[],
  store: null as unknown as Store,
  captures: [] as Capture[],

  failAt(fault: Fault, at: number): void {
    Object.assign(plan, { fault, at, count: 0, fired: false })
  },
  heal(): boolean {
    plan.at = 0
    return plan.fired
  },

  /** Begins to record a take; returns its id. */
  begin(): string {
    lastId += 1
    const id = `take-${lastId}-${Math.random()}`
    const capture = new Capture(exampleTake({ id }), [], store, ({ code }: Failure) =>
      bench.troubles.push(code),
    )
    bench.captures.push(capture)
    return id
  },
  /** Samples come in for a while. */
  async play(ms: number): Promise<void> {
    const capture = bench.captures.at(-1)!
    const leave = source.subscribe((sample) => capture.add(sample))
    await source.play(ms)
    leave()
  },
  async finish(): Promise<Result<number>> {
    const capture = bench.captures.at(-1)!
    const samples = capture.samples()
    const finished = await capture.finish(completed(capture.recording, samples, source.facts()))
    return finished.ok ? { ok: true, value: samples.tMs.length } : finished
  },
  stored: async (id: string): Promise<number> => (await store.loadSamples(id))?.tMs.length ?? 0,

  addLibrary: (id: string): Promise<Result<null>> =>
    store.addFullLibrary({ library: exampleLibrary({ id, name: id }), recordings: takesOf(id) }),
  takesIn: async (id: string): Promise<number | null> =>
    (await store.loadFull(id))?.recordings.length ?? null,

  careless: {
    /** A library and its takes, each in a transaction of its own. */
    async addLibrary(id: string): Promise<string> {
      try {
        const first = await store.putLibrary(exampleLibrary({ id, name: id }))
        if (!first.ok) return first.code
        for (const item of takesOf(id)) {
          const added = await store.addRecordings([item])
          if (!added.ok) return added.code
        }
        return 'stored'
      } catch (error) {
        return String(error)
      }
    },
    /** One second after the other, none tried again; returns how many samples are there. */
    async record(id: string): Promise<number> {
      const db = await openDB('careless', 1, {
        upgrade: (fresh) => {
          fresh.createObjectStore('chunks', { keyPath: ['id', 'index'] })
        },
      })
      for (let index = 0; index < 4; index++) {
        const tx = db.transaction('chunks', 'readwrite')
        const samples = exampleSamples(60, 60 * index)
        await Promise.all([tx.store.add({ ...samples, id, index }), tx.done]).catch(() => undefined)
      }
      const range = IDBKeyRange.bound([id, 0], [id, 99])
      const chunks = (await db.getAll('chunks', range)) as { tMs: Float64Array }[]
      db.close()
      return chunks.reduce((sum, { tMs }) => sum + tMs.length, 0)
    },
    /** One more second behind what is there. */
    async append(id: string, index: number): Promise<void> {
      const db = await openDB('careless', 1)
      await db.put('chunks', { ...exampleSamples(60), id, index })
      db.close()
    },
    async seconds(): Promise<number> {
      const names = (await indexedDB.databases()).map(({ name }) => name)
      if (!names.includes('careless')) return 0
      const db = await openDB('careless')
      const count = await db.count('chunks')
      db.close()
      return count
    },
    /** A connection that does not give way to a newer version. */
    keepOpen: async (): Promise<number> => (await openDB('movewright')).version,
  },
}

function takesOf(libraryId: string) {
  return Array.from({ length: 3 }, (_, n) => ({
    recording: exampleTake({ id: `${libraryId}-${n}`, libraryId }),
    samples: exampleSamples(60, n),
  }))
}

declare global {
  interface Window {
    faults: typeof bench
    faultsReady: boolean
  }
}

async function prepare(): Promise<void> {
  window.faults = bench
  if (params.has('wait')) {
    window.faultsReady = true
    return
  }
  store = await openStore('movewright', {
    steps,
    onBlocked: (message) => bench.news.push(`blocked: ${message}`),
    onSuperseded: (message) => bench.news.push(`superseded: ${message}`),
    onPen: (isHere) => bench.news.push(isHere ? 'writes' : 'reads'),
    onEvicted: () => {
      bench.news.push('evicted')
      // As the app does with what it has in memory.
      void store.putLibrary(library)
    },
  })
  bench.store = store
  const stored = await store.listLibraries()
  if (!stored.some(({ id }) => id === library.id)) await store.putLibrary(library)
  window.faultsReady = true
}

void prepare()
