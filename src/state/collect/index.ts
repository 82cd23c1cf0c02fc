import type { ReadonlySignal } from '@preact/signals'
import { takeSharedFiles } from '../../offline/shared-files'
import type { RecogniserClient } from '../../recogniser/client'
import { demonstrate } from '../../shared/collect/demonstration'
import type { Demonstration } from '../../shared/collect/plan'
import type { TakesCompared } from '../../shared/collect/takes-compared'
import { dropTakes, withdrawTester } from '../../shared/collect/withdraw'
import { COLLECTING } from '../../shared/words/en/collecting'
import type { Job } from '../app'
import { fingerprint } from '../fingerprint'
import { createJobSlot } from '../jobs'
import { leaveTogether } from '../leave'
import type { Shelf } from '../shelf'
import {
  BringHome,
  type Bringing,
  type BringReport,
  type BringState,
  type BroughtFile,
  type UnreadFile,
} from './bring'
import { createFolder, type FolderState } from './folder'
import { identify } from './identify'
import { createKeptFar } from './kept-far'
import { NO_LIBRARY } from './no-library'
import { createPlans, type PlansState } from './plans'

export { freshPlan } from './plans'
export type { Bringing, BringReport, BroughtFile, UnreadFile }

/** Even period of a demonstration before a code asks for a coarser one, ms. */
const DEMONSTRATION_MS = 50

export interface CollectState extends BringState, PlansState {
  folder: FolderState
  /** Files that another app shared to this one; each is given once. */
  takeShared(): Promise<BroughtFile[]>
  /** One of the designer's takes, to be shown to testers. */
  demonstration(takeId: string): Promise<Demonstration | null>
  /** Takes a tester out for good, by the code shown; can be undone for the visit. */
  withdraw(testerCode: string): Promise<void>
  /** Leaves takes out and remembers that they were; can be undone for the visit. */
  drop(takeIds: string[]): Promise<void>
  compared: ReadonlySignal<Job<TakesCompared>>
  compare(): Promise<void>
  /** Content or recording ids of takes that are far from others and were looked at and kept. */
  keptFar: ReadonlySignal<ReadonlySet<string>>
  keepFar(takeId: string): Promise<void>
}

export interface CollectParts {
  shelf: Shelf
  recogniser: RecogniserClient
}

/** Plans, what testers bring home, and who takes part. */
export function createCollect({ shelf, recogniser }: CollectParts): CollectState {
  const bring = new BringHome(shelf, recogniser)
  const compared = createJobSlot<TakesCompared>({
    owner: () => shelf.current.value?.id ?? null,
    basis: () => fingerprint(shelf.current.value, shelf.recordings.value),
    work: async (_variant, abort, onProgress) => {
      const id = shelf.current.peek()?.id
      const full = id === undefined ? null : await shelf.store.loadFull(id)
      if (full === null) return NO_LIBRARY
      return recogniser.compareTakes(full, { signal: abort, onProgress })
    },
  })
  return {
    bringing: bring.bringing,
    bring: (files, unread) => bring.bring(files, unread),
    mapGesture: (id, to) => bring.mapGesture(id, to),
    decide: (key, choice) => bring.decide(key, choice),
    setSamePerson: (code, samePerson) => bring.setSamePerson(code, samePerson),
    decideAll: (side) => bring.decideAll(side),
    agree: () => bring.agree(),
    takeShared: takeSharedFiles,
    folder: createFolder(),
    forget: () => bring.forget(),
    ...createPlans(shelf),
    async demonstration(takeId) {
      const take = shelf.recordings.peek().find(({ id }) => id === takeId)
      const samples = await shelf.store.loadSamples(takeId)
      if (take?.kind !== 'take' || samples === null) return null
      return demonstrate(samples, take.device.accelSign, DEMONSTRATION_MS, take.trim)
    },
    withdraw: (testerCode) =>
      leave({ shelf, recogniser }, COLLECTING.withdrawn(testerCode), (library, own, at) =>
        withdrawTester(library, own, testerCode, at),
      ),
    drop: (takeIds) =>
      leave({ shelf, recogniser }, COLLECTING.dropped(takeIds.length), (library, own, at) =>
        dropTakes(library, own, takeIds, at),
      ),
    compared: compared.job,
    compare: async () => {
      await compared.run()
    },
    ...createKeptFar(shelf),
  }
}

/** As `leaveTogether`, once the content of every recording is known. */
async function leave(
  { shelf, recogniser }: CollectParts,
  said: string,
  act: Parameters<typeof leaveTogether>[2],
): Promise<void> {
  const id = shelf.current.peek()?.id
  if (id === undefined) return
  if (shelf.check(await identify(shelf, recogniser, id))) await leaveTogether(shelf, id, act, said)
}
