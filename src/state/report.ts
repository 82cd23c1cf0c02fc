import { loadFirmwareSources } from '../export/core-files'
import type { RecogniserClient } from '../recogniser/client'
import { sha256Hex } from '../shared/format/sha256'
import type { GripTolerance } from '../shared/grip/grip-tolerance'
import type { LightPlayer } from '../shared/light/player'
import type { Evaluation } from '../shared/model/evaluation'
import { fail, ok, type Result } from '../shared/model/result'
import { coreSourceHash, lightReport, ribbonsOf } from '../shared/report/gather'
import type { Measured, ReportData } from '../shared/report/report-data'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { App, Job } from './app'
import type { Shelf } from './shelf'
import { sourceVersion } from './source-version'

export interface ReportParts {
  shelf: Shelf
  recogniser: RecogniserClient
  train: App['train']
  loadLight: () => Promise<LightPlayer>
  evaluation: Job<Evaluation>
  grip: Job<GripTolerance>
}

/**
 * Everything a report of the current library says. Trains when there is no fresh model; measures
 * nothing: what was not measured is told as such.
 */
export async function gatherReport(parts: ReportParts): Promise<Result<ReportData>> {
  const { shelf, recogniser } = parts
  const id = shelf.current.peek()?.id
  const trained = await parts.train()
  const full = id === undefined ? null : await shelf.store.loadFull(id)
  if (full === null) return fail('report/no-library', OPEN_LIBRARY.noneToReportOn)
  const file = await recogniser.writeLibrary(full)
  if (!file.ok) return file
  const { coreFiles } = await loadFirmwareSources()
  return ok({
    library: full.library,
    recordings: full.recordings.map(({ recording }) => recording),
    ribbons: ribbonsOf(full),
    evaluation: measured(parts.evaluation),
    grip: measured(parts.grip),
    trained: trained.ok ? trained.value : null,
    trainingFailure: trained.ok ? '' : trained.message,
    light: lightReport(await parts.loadLight(), full.library),
    versions: {
      ...sourceVersion(),
      coreHash: coreSourceHash(coreFiles),
      libraryHash: await sumOf(file.value),
    },
    madeAt: new Date().toISOString(),
  })
}

function measured<T>(job: Job<T>): Measured<T> | null {
  return job.state === 'done' ? { value: job.value, at: job.at ?? null, stale: job.stale } : null
}

/** SHA-256 by the browser where it has one, as a library may be large. */
async function sumOf(bytes: Uint8Array): Promise<string> {
  if (crypto.subtle === undefined) return sha256Hex(bytes)
  const digest = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>)
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
