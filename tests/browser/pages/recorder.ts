import type { LiveClient } from '../../../src/recording/live-cutter'
import { Recorder } from '../../../src/recording/recorder'
import type { OfferedTake } from '../../../src/recording/types'
import { createPhoneSource } from '../../../src/sensors/phone-source'
import { type Failure, fail, type Result } from '../../../src/shared/model/result'
import { openStore } from '../../../src/storage/open-store'
import type { Store } from '../../../src/storage/store'
import { exampleLibrary, exampleSamples, exampleTake } from '../../storage/examples'

/** These pages record by hand only. */
const noRecogniser: LiveClient = {
  openLive: async () => fail('worker/crashed', 'There is no recogniser on this page.'),
  pushLive: async () => fail('worker/crashed', 'There is no recogniser on this page.'),
  closeLive: async () => fail('worker/crashed', 'There is no recogniser on this page.'),
}

const source = createPhoneSource()
const library = exampleLibrary()
const bench = {
  source,
  library,
  offered: [] as readonly OfferedTake[],
  troubles: [] as Failure[],
  store: null as Store | null,
  recorder: null as Recorder | null,
  setup: { libraryId: library.id, testerCode: 'A', hand: 'right' as const, target: library.target },
  /** A library with many takes of some size, to be interrupted while it is added. */
  addLarge: (takes: number, samplesEach: number): Promise<Result<null>> =>
    bench.store!.addFullLibrary({
      library: exampleLibrary({ id: 'large', name: 'Large' }),
      recordings: Array.from({ length: takes }, (_, i) => ({
        recording: exampleTake({ id: `large-${i}`, libraryId: 'large' }),
        samples: exampleSamples(samplesEach),
      })),
    }),
  addTake: (id: string, samples: number): Promise<Result<null>> =>
    bench.store!.addRecordings([
      { recording: exampleTake({ id }), samples: exampleSamples(samples) },
    ]),
}

declare global {
  interface Window {
    bench: typeof bench
    ready: boolean
  }
}

window.bench = bench

async function prepare(): Promise<void> {
  bench.store = await openStore()
  const stored = await bench.store.listLibraries()
  if (!stored.some(({ id }) => id === library.id)) await bench.store.putLibrary(library)
  bench.recorder = new Recorder({
    store: bench.store,
    client: noRecogniser,
    newId: () => crypto.randomUUID(),
    deviceLabel: 'test browser',
    events: {
      onPhase: () => {},
      onOffered: (offered) => {
        bench.offered = offered
      },
      onStored: () => {},
      onHeldBack: () => {},
      onIgnored: () => {},
      onTrouble: (failure) => bench.troubles.push(failure),
    },
  })
  await bench.recorder.use(source)
  window.ready = true
}

document.querySelector('#start')?.addEventListener('click', () => void source.start())
void prepare()
