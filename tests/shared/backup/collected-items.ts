import type { BackupItem } from '../../../src/shared/backup/kept-items'
import { recordOf } from '../../../src/shared/collect/session-record'
import type { SessionRun } from '../../../src/shared/collect/session-run'
import type { KeptModel } from '../../../src/shared/compare/kept-model'
import { sha256Hex } from '../../../src/shared/format/sha256'
import { samplePlan, sampleSession } from '../collect/samples'
import { collectedLibrary } from '../format/collected-library'

const { id, testerCode, testerKey, hand, consentAt, startedAt } = sampleSession()

/** A session of the collected library that is not over. */
const run: SessionRun = {
  ...{ id, testerCode, testerKey, hand, consentAt, startedAt },
  plan: samplePlan(),
  seed: 5,
  endedAt: null,
  outcomes: [{ kind: 'kept', recordingId: 't1' }, { kind: 'skipped' }, { kind: 'rested' }],
}

const bytes = Uint8Array.of(77, 86, 87, 1, 0, 255)
const { library } = collectedLibrary()

const model: KeptModel = {
  hash: sha256Hex(bytes),
  bytes,
  core: 'core of the bench',
  libraryHash: sha256Hex(Uint8Array.of(1)),
  training: library.training,
  target: { name: 'Lantern board', rateHz: 104, accelFullScale: 4, gyroFullScale: 500 },
  gestures: library.gestures.map(({ id, name }) => ({ id, name })),
  takes: [{ id: 't1', gestureId: 'raise', testerCode: 'A1' }],
  backgrounds: 1,
  matcher: 'template',
  tableBytes: 600,
  ramBytes: 1800,
  pinned: true,
  evaluations: {},
}

/** What is kept beside the collected library, of each kind that a backup takes along. */
export const COLLECTED_ITEMS: BackupItem[] = [
  { kind: 'models', id: 'model-1', keptAt: startedAt, value: model },
  { kind: 'sessions', id, keptAt: startedAt, value: recordOf(run) },
]
