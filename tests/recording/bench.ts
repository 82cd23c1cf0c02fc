import { loadCoreForNode } from '../../src/build/load-core'
import type { LiveClient } from '../../src/recording/live-cutter'
import { Recorder } from '../../src/recording/recorder'
import type { HeldRecording, OfferedTake, RecordPhase } from '../../src/recording/types'
import type { Recording } from '../../src/shared/model/library'
import { type Failure, fail, ok } from '../../src/shared/model/result'
import { openStore } from '../../src/storage/open-store'
import type { Store } from '../../src/storage/store'
import { LiveRun } from '../../workers/recogniser/live-run'
import { exampleLibrary } from '../storage/examples'
import { PlayedSource } from './played-source'

export const LIBRARY = exampleLibrary()
export const SETUP = {
  libraryId: LIBRARY.id,
  testerCode: 'A',
  hand: 'left' as const,
  target: LIBRARY.target,
}

/** The worker's own live recognition, on this thread. */
export function liveClient(): LiveClient {
  let run: LiveRun | null = null
  return {
    openLive: async (model, target, sign) => {
      run = new LiveRun(await loadCoreForNode(), model, target, sign)
      return ok(null)
    },
    pushLive: async (samples) => (run === null ? fail('live', 'closed') : ok(run.push(samples))),
    closeLive: async () => {
      run = null
      return ok(null)
    },
  }
}

let count = 0

/** A recorder with a database of its own and a source that the test plays; notes all it hears. */
export class Bench {
  readonly source = new PlayedSource()
  readonly phases: RecordPhase[] = []
  readonly stored: Recording[] = []
  readonly troubles: Failure[] = []
  readonly ignored: string[] = []
  offered: readonly OfferedTake[] = []
  heldBack: readonly HeldRecording[] = []
  recorder!: Recorder
  store!: Store
  readonly #name: string

  private constructor() {
    count += 1
    this.#name = `bench-${count}`
  }

  static async open(): Promise<Bench> {
    const bench = new Bench()
    bench.store = await openStore(bench.#name)
    await bench.store.putLibrary(LIBRARY)
    await bench.equip({})
    await bench.source.start()
    return bench
  }

  /** Another recorder, with some part of it replaced. */
  async equip(parts: { store?: Pick<Store, 'openJournal'>; client?: LiveClient }): Promise<void> {
    let made = 0
    this.recorder = new Recorder({
      store: this.store,
      client: liveClient(),
      newId: () => `recording-${++made}`,
      deviceLabel: 'test bench',
      events: {
        onPhase: (phase) => this.phases.push(phase),
        onOffered: (takes) => {
          this.offered = takes
        },
        onStored: (recording) => this.stored.push(recording),
        onHeldBack: (held) => {
          this.heldBack = held
        },
        onIgnored: (message) => this.ignored.push(message),
        onTrouble: (failure) => this.troubles.push(failure),
      },
      ...parts,
    })
    await this.recorder.use(this.source)
  }

  /** The database as another start of the app would find it. */
  reopen(): Promise<Store> {
    return openStore(this.#name)
  }

  async close(): Promise<void> {
    await this.recorder.stop()
    this.store.close()
  }
}
