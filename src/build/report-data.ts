import type { Core } from '../shared/core/core'
import { writeLibraryFile } from '../shared/format/library-file'
import { sha256Hex } from '../shared/format/sha256'
import { measureGrip } from '../shared/grip/measure-grip'
import type { Evaluation } from '../shared/model/evaluation'
import type { FullLibrary, MatcherWish } from '../shared/model/library'
import { ok, type Result } from '../shared/model/result'
import type { OnProgress } from '../shared/protocol/recogniser'
import { coreSourceHash, lightReport, ribbonsOf } from '../shared/report/gather'
import type { Measured, ReportData } from '../shared/report/report-data'
import { trainModel } from '../shared/training/train-model'
import { readFirmwareSources } from './core-files'
import { loadLightForNode } from './load-core'
import { sourceVersion } from './source-version'

export interface ReportWishes {
  matcher: MatcherWish
  /** Grip tolerance takes minutes, so it is measured only when asked for. */
  grip: boolean
}

/** What the report of an evaluation made here says; the same as the app's from the same library. */
export async function reportDataOf(
  core: Core,
  full: FullLibrary,
  evaluation: Evaluation,
  { matcher, grip }: ReportWishes,
  onProgress: OnProgress,
): Promise<Result<ReportData>> {
  const at = new Date().toISOString()
  const now = <T>(value: T): Measured<T> => ({ value, at, stale: false })
  const library = { ...full.library, training: { ...full.library.training, matcher } }
  const asked = { ...full, library }
  const trained = trainModel(core, asked, { onProgress })
  const turned = grip ? await measureGrip(core, asked, onProgress) : null
  if (turned?.ok === false) return turned
  return ok({
    library,
    recordings: full.recordings.map(({ recording }) => recording),
    ribbons: ribbonsOf(full),
    evaluation: now(evaluation),
    grip: turned === null ? null : now(turned.value),
    trained: trained.ok ? trained.value : null,
    trainingFailure: trained.ok ? '' : trained.message,
    light: lightReport(await loadLightForNode(), library),
    versions: {
      ...sourceVersion(),
      coreHash: coreSourceHash(readFirmwareSources().coreFiles),
      libraryHash: sha256Hex(writeLibraryFile(full)),
    },
    madeAt: at,
  })
}
