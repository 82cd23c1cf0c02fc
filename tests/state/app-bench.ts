import 'fake-indexeddb/auto'
import './browser-globals'
import type { CallOptions, RecogniserClient } from '../../src/recogniser/client'
import { createPhoneSource } from '../../src/sensors/phone-source'
import { createSimulatedSource } from '../../src/sensors/simulated-source'
import { generateDemoLibrary } from '../../src/shared/demo/demo-library'
import { evaluateLibrary } from '../../src/shared/evaluation/evaluate-library'
import { measureGrip } from '../../src/shared/grip/measure-grip'
import type { FullLibrary } from '../../src/shared/model/library'
import type { RunParts } from '../../src/shared/parts/part-jobs'
import { partsHere } from '../../src/shared/parts/parts-here'
import { defaultTarget } from '../../src/shared/target/default-target'
import type { App } from '../../src/state/app'
import { assembleApp } from '../../src/state/assemble-app'
import { exportFirmware } from '../../src/state/export-firmware'
import { createStoreNews } from '../../src/state/store-news'
import { createUpdate } from '../../src/state/update'
import { openStore } from '../../src/storage/open-store'
import { createService } from '../../workers/recogniser/service'

/** Loaded when it is needed: tests of screens run where the core's build cannot be found. */
const loadCore = async () => (await import('../../src/build/load-core')).loadCoreForNode()

/** The worker's own service on this thread; jobs and live are served apart, as by two workers. */
export function clientHere(): RecogniserClient {
  const jobs = createService(loadCore)
  const live = createService(loadCore)
  const progress = (options?: CallOptions) => options?.onProgress ?? (() => undefined)
  return {
    train: (full, options) => jobs.train(full, progress(options)),
    evaluate: async (full, holdout, options) =>
      evaluateLibrary(await loadCore(), full, holdout, progress(options)),
    grip: async (full, options) => measureGrip(await loadCore(), full, progress(options)),
    parts: () =>
      (async (...job: Parameters<RunParts>) => partsHere(await loadCore())(...job)) as RunParts,
    vectors: jobs.vectors,
    replay: jobs.replay,
    unroll: jobs.unroll,
    decide: jobs.decide,
    openLive: live.openLive,
    pushLive: (samples, options) => live.pushLive(samples, options?.buttons),
    closeLive: live.closeLive,
    openTeach: live.openTeach,
    beginTeach: live.beginTeach,
    pushTeach: live.pushTeach,
    writeLibrary: (full, options) => jobs.writeLibrary(full, progress(options)),
    readLibrary: (bytes, options) => jobs.readLibrary(bytes, progress(options)),
    packLibrary: (full, items, options) => jobs.packLibrary(full, items, progress(options)),
    readBackup: (file, options) => jobs.readBackup(file, progress(options)),
    readBackupLibrary: (file, place, options) =>
      jobs.readBackupLibrary(file, place, progress(options)),
    readIncoming: jobs.readIncoming,
    contentIds: jobs.contentIds,
    compareTakes: (full, options) => jobs.compareTakes(full, progress(options)),
    dispose: () => undefined,
  }
}

let count = 0

/** A name nobody has used: a database of its own. */
export function freshName(): string {
  count += 1
  return `app-${count}`
}

/** The whole state over real storage, sensors of the simulated phone and the real recogniser. */
export async function openApp(name = freshName()): Promise<App> {
  const storeNews = createStoreNews(() => undefined)
  return assembleApp({
    store: await openStore(name, storeNews.options),
    storeNews,
    recogniser: clientHere(),
    core: 'core of the bench',
    phone: createPhoneSource({
      secure: false,
      motionEvents: undefined,
      window: new EventTarget(),
      document: Object.assign(new EventTarget(), { visibilityState: 'visible' as const }),
      nowMs: () => performance.now(),
    }),
    simulated: createSimulatedSource(7),
    defaultTarget,
    generateDemoLibrary: () => smallDemo(),
    exportFirmware,
    createUpdate,
    loadLight: async () => (await import('../../src/build/load-core')).loadLightForNode(),
  })
}

let demo: Promise<FullLibrary> | undefined

/** Two testers, three gestures and no background of the demo: enough to train on. */
function smallDemo(): Promise<FullLibrary> {
  demo ??= generateDemoLibrary(1).then(({ library, recordings }) => {
    const gestures = library.gestures.slice(2, 5)
    const ids = new Set(gestures.map((gesture) => gesture.id))
    return {
      library: { ...library, gestures },
      recordings: recordings.filter(
        ({ recording }) =>
          recording.kind === 'take' &&
          ids.has(recording.gestureId) &&
          recording.testerCode <= 'T02',
      ),
    }
  })
  return demo
}
