import { strFromU8 } from 'fflate'
import { LIBRARY_JSON, parseLibraryDocument } from '../format/library-document'
import { LIBRARY_LIMITS, readLibraryFile } from '../format/library-file'
import type { LibraryDocument } from '../format/library-schema'
import { readSamplesCsv } from '../format/samples-csv'
import { libraryFromFolder, type TakeFile } from '../format/take-folder'
import { parseTakePath } from '../format/take-path'
import type { FullLibrary, RecordingWithSamples } from '../model/library'
import { fail, ok, type Result } from '../model/result'
import { sampleCount } from '../model/sample'
import type { OnProgress } from '../protocol/recogniser'
import { defaultTarget } from '../target/default-target'
import { BACKUP_FILE } from '../words/en/backup-file'
import { WholeEntries } from './whole-entries'

/** A recording that a damaged file names and does not hold whole. */
export interface LostRecording {
  /** Gesture's name; null for background. */
  gesture: string | null
  tester: string
  /** Path of its samples in the file. */
  file: string
}

export interface Salvaged {
  full: FullLibrary
  lost: LostRecording[]
  /**
   * Where the facts came from: the file as it should be, its own list though the file is damaged,
   * the backup's second list, or nothing but the paths of the samples (gesture and tester).
   */
  from: 'whole-file' | 'own-list' | 'second-list' | 'paths'
}

/**
 * A library file, or of a damaged one every recording that is whole: data with the right length and
 * CRC-32, readable as CSV, with as many samples as its facts say. The rest is listed.
 * @param secondList a copy of `library.json` that a backup keeps elsewhere, null when there is none
 * @returns failures 'library/newer', 'salvage/nothing'
 */
export function salvageLibrary(
  bytes: Uint8Array,
  secondList: Uint8Array | null,
  onProgress?: OnProgress,
): Result<Salvaged> {
  const whole = readLibraryFile(bytes, onProgress)
  if (whole.ok) return ok({ full: whole.value, lost: [], from: 'whole-file' })
  if (whole.code === 'library/newer') return whole
  const entries = new WholeEntries(bytes, LIBRARY_LIMITS.maxEntryBytes)
  const lists = [
    ['own-list', entries.read(LIBRARY_JSON)?.bytes ?? null],
    ['second-list', secondList],
  ] as const
  for (const [from, json] of lists) {
    const document = json === null ? null : parseLibraryDocument(strFromU8(json))
    if (document === null) continue
    if (document.ok) return ok({ ...byDocument(entries, document.value), from })
    if (document.code === 'library/newer') return document
  }
  return byPaths(entries)
}

function byDocument(entries: WholeEntries, document: LibraryDocument): Omit<Salvaged, 'from'> {
  const names = new Map(document.library.gestures.map(({ id, name }) => [id, name]))
  const recordings: RecordingWithSamples[] = []
  const lost: LostRecording[] = []
  for (const { file, ...recording } of document.recordings) {
    const samples = samplesOf(entries, file)
    if (samples !== null && sampleCount(samples) === recording.sampleCount) {
      recordings.push({ recording, samples })
      continue
    }
    const gesture =
      recording.kind === 'take' ? (names.get(recording.gestureId) ?? recording.gestureId) : null
    lost.push({ gesture, tester: recording.testerCode, file })
  }
  return { full: { library: document.library, recordings }, lost }
}

function samplesOf(entries: WholeEntries, file: string) {
  const found = entries.read(file)
  if (found === null) return null
  const samples = readSamplesCsv(strFromU8(found.bytes), file)
  return samples.ok ? samples.value : null
}

/** Without any list, a path still says gesture and tester, as in a folder of takes. */
function byPaths(entries: WholeEntries): Result<Salvaged> {
  const files: TakeFile[] = []
  const lost: LostRecording[] = []
  const taken = new Set<number>()
  for (const path of entries.paths()) {
    const where = path.endsWith('.csv') ? parseTakePath(path) : null
    if (where === null || !where.ok) continue
    const found = entries.read(path)
    const text = found === null ? '' : strFromU8(found.bytes)
    if (found !== null && readSamplesCsv(text, path).ok) {
      // A damaged name leaves the same data under two: they count once.
      if (!taken.has(found.start)) files.push({ path, text })
      taken.add(found.start)
      continue
    }
    const gesture = where.value.kind === 'take' ? where.value.gesture : null
    lost.push({ gesture, tester: where.value.tester, file: path })
  }
  const full = libraryFromFolder(BACKUP_FILE.salvaged, files, defaultTarget())
  if (!full.ok) {
    return fail('salvage/nothing', BACKUP_FILE.noTake)
  }
  return ok({ full: withoutSign(full.value), lost, from: 'paths' })
}

/** Paths do not say which sign of gravity the phone had. */
function withoutSign({ library, recordings }: FullLibrary): FullLibrary {
  return {
    library,
    recordings: recordings.map(({ recording, samples }) => ({
      recording: { ...recording, device: { ...recording.device, accelSign: 0 } },
      samples,
    })),
  }
}
