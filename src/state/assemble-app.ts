import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { RecogniserClient } from '../recogniser/client'
import type { SimulatedSource } from '../sensors/simulated-source'
import type { LightPlayer } from '../shared/light/player'
import { NOTICES } from '../shared/words/en/notices'
import type { Store } from '../storage/store'
import type { App, LibraryState, MotionState, UpdateState } from './app'
import { compareBoard } from './compare-board'
import { exportLibrary } from './exports'
import { createLibraryState, type LibraryParts } from './library'
import { createLight } from './light'
import { Live } from './live'
import { createJobs } from './model'
import { createMotion, type MotionParts } from './motion'
import { createNotices, type Notices } from './notices'
import { preferences } from './preferences'
import { deviceLabel, RecordSlice } from './record'
import { createSavedElsewhere, type SavedElsewhere } from './saved-elsewhere'
import { createShelf, type Shelf } from './shelf'
import { type StoreNews, sayWhatIsGone } from './store-news'

/** What was deleted can be undone for the visit, and is kept this much longer; then it goes. */
const KEPT_DELETED_MS = 24 * 3_600_000

export interface AppParts extends LibraryParts, MotionParts {
  createUpdate: (busy: ReadonlySignal<boolean>) => UpdateState
  store: Store
  storeNews: StoreNews
  recogniser: RecogniserClient
  /** Which core and which code around it train and measure: results of others are not fresh. */
  core: string
  simulated: SimulatedSource
  /** A fresh player of light effects. */
  loadLight: () => Promise<LightPlayer>
  /** Loaded when it is asked for: it carries the core's sources as text. */
  exportFirmware: (
    shelf: Shelf,
    train: App['train'],
    recogniser: RecogniserClient,
    loadLight: () => Promise<LightPlayer>,
  ) => ReturnType<App['exportFirmware']>
}

/** Ties the slices together. Resolves when the stored libraries are read. */
export async function assembleApp(parts: AppParts): Promise<App> {
  const { store, recogniser } = parts
  const notices = createNotices()
  const shelf = createShelf(store, notices)
  const saved = createSavedElsewhere(shelf)
  const { state: library, add } = createLibraryState(shelf, parts)
  const motion = createMotion(parts)
  const jobs = createJobs(shelf, recogniser, parts.core)
  const train = () => jobs.training.run()
  const record = new RecordSlice({ shelf, recogniser, motion, simulated: parts.simulated })
  const live = new Live({ recogniser, motion, train, library: () => shelf.current.value })
  const performing = signal(false)

  await store.purgeDeleted(new Date(Date.now() - KEPT_DELETED_MS).toISOString())
  const openBefore = preferences.peek().libraryId
  await shelf.reload()
  sayWhatIsGone(shelf, openBefore)
  await record.readUnfinished()
  parts.storeNews.follow(shelf, () => record.readUnfinished())

  return {
    library,
    motion,
    record,
    live,
    light: createLight(shelf, parts.loadLight),
    ...createLater({
      parts,
      shelf,
      saved,
      motion,
      library,
      live,
      train,
      jobs,
      notices,
      performing,
    }),
    ...jobState(jobs, recogniser),
    train,
    report: async () =>
      (await import('./report')).gatherReport({
        ...{ shelf, recogniser, train },
        loadLight: parts.loadLight,
        evaluation: jobs.evaluation.job.value,
        grip: jobs.grip.job.value,
      }),
    update: parts.createUpdate(
      computed(() => record.phase.value !== 'idle' || live.running.value || performing.value),
    ),
    writesHere: parts.storeNews.writesHere,
    writeHere: () => writeHere(shelf),
    notices: notices.shown,
    undoable: notices.undoable,
    dismiss: notices.dismiss,
    exportLibrary: (steering = {}) => exportLibrary(shelf, recogniser, saved, steering),
    unsaved: saved.unsaved,
    compareBoard: (text) => compareBoard(shelf, train, recogniser, text),
    exportFirmware: () => parts.exportFirmware(shelf, train, recogniser, parts.loadLight),
    importLibrary: importer(shelf, recogniser, saved, add),
  }
}

/** Long jobs, as the screens see and start them. */
function jobState(jobs: ReturnType<typeof createJobs>, recogniser: RecogniserClient) {
  return {
    model: jobs.training.job,
    evaluation: jobs.evaluation.job,
    evaluate: async (holdout) => {
      await jobs.evaluation.run(holdout)
    },
    grip: jobs.grip.job,
    measureGrip: async () => {
      await jobs.grip.run()
    },
    replay: jobs.replay,
    unroll: (model, query) => recogniser.unroll(model, query),
  } satisfies Partial<App>
}

async function writeHere({ store, notices, reload }: Shelf): Promise<void> {
  if ((await store.takePen()) === 'here') return reload()
  notices.say(NOTICES.otherTabRecords)
}

interface Slices {
  parts: AppParts
  shelf: Shelf
  saved: SavedElsewhere
  motion: MotionState
  library: LibraryState
  live: Live
  train: App['train']
  jobs: ReturnType<typeof createJobs>
  notices: Notices
  /** A tester is being led through a session. */
  performing: Signal<boolean>
}

/** Parts of the state that few visits need. */
function createLater(slices: Slices) {
  const { parts, shelf, saved, motion, library, live, train, jobs, notices, performing } = slices
  const { recogniser } = parts
  const openBoard = whenAsked(async () =>
    (await import('./board')).createBoardState({
      shelf,
      recogniser,
      train,
      replay: jobs.replay,
      update: library.update,
      addLogs: library.addLogs,
    }),
  )
  const openSessions = whenAsked(async () =>
    (await import('./session')).createSessions({
      shelf,
      motion,
      recogniser,
      deviceLabel: deviceLabel(),
      performing,
      defaultTarget: parts.defaultTarget,
    }),
  )
  const openStage = whenAsked(async () =>
    (await import('./stage')).createStageState({
      live,
      motionStatus: motion.status,
      model: jobs.training.job,
      library: shelf.current,
      notices,
    }),
  )
  const openCollect = whenAsked(async () =>
    (await import('./collect')).createCollect({ shelf, recogniser }),
  )
  const openDecide = whenAsked(async () =>
    (await import('./decide')).createDecide({ shelf, recogniser, core: parts.core }),
  )
  const openReceive = whenAsked(async () => (await import('./receive')).createReceive())
  const openBackup = whenAsked(async () =>
    (await import('./backup')).createBackup(shelf, { store: shelf.store, recogniser, saved }),
  )
  const openModels = whenAsked(async () =>
    (await import('./models')).createModels(shelf, jobs.keeper),
  )
  const openTeach = whenAsked(async () =>
    (await import('./teach')).createTeach({ shelf, motion, recogniser, train }),
  )
  return {
    openModels,
    openTeach,
    openBackup,
    openBoard,
    openDecide,
    openCollect,
    openReceive,
    openSessions,
    openStage,
  }
}

/** A part of the state whose code is loaded when it is first asked for; again when that failed. */
function whenAsked<T>(load: () => Promise<T>): () => Promise<T> {
  let loaded: Promise<T> | undefined
  return () => {
    loaded ??= load().catch((error: unknown) => {
      loaded = undefined
      throw error
    })
    return loaded
  }
}

function importer(
  shelf: Shelf,
  recogniser: RecogniserClient,
  saved: SavedElsewhere,
  add: ReturnType<typeof createLibraryState>['add'],
): App['importLibrary'] {
  return async (bytes, steering = {}) => {
    const read = await recogniser.readLibrary(bytes, steering)
    if (!read.ok) return read
    const added = await add(read.value)
    if (!added.ok) return added
    await shelf.askToKeep()
    // It came from a file, so a file holds it.
    const recordings = shelf.recordings.peek().map(({ id }) => id)
    await saved.mark(added.value.id, recordings)
    return added
  }
}
