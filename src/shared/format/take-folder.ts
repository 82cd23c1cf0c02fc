import {
  type Background,
  DEFAULT_TRAINING,
  type FullLibrary,
  type RecordingWithSamples,
  type Take,
} from '../model/library'
import { fail, ok, type Result } from '../model/result'
import { AXES, type SampleBlock, sampleCount } from '../model/sample'
import type { Target } from '../model/target'
import { LIBRARY_FILE } from '../words/en/library-file'
import { applyMapping, previewCsv } from './csv-import'
import { readSamplesCsv, SAMPLE_COLUMNS } from './samples-csv'
import { parseTakePath, type TakePath } from './take-path'

export interface TakeFile {
  /** Relative to the folder. */
  path: string
  text: string
}

const LIBRARY_ID = 'folder'
const HEADER = SAMPLE_COLUMNS.join(',')

/** RFC 3339; a folder does not say when its takes were made, and the result must not vary. */
const UNKNOWN_TIME = '1970-01-01T00:00:00Z'

/**
 * A library from a folder of CSV takes (FORMAT.md, "Folder of takes"). Gestures come in order of
 * their names. Files with Movewright's header are read as they are; others by what their header and
 * numbers suggest.
 * @returns the first failure of any file; nothing half
 */
export function libraryFromFolder(
  name: string,
  files: readonly TakeFile[],
  target: Target,
): Result<FullLibrary> {
  const sorted = [...files].sort((a, b) => (a.path < b.path ? -1 : 1))
  const recordings: RecordingWithSamples[] = []
  const gestures = new Set<string>()
  for (const [index, file] of sorted.entries()) {
    const where = parseTakePath(file.path)
    if (!where.ok) return where
    const samples = readTakeCsv(file, target)
    if (!samples.ok) return samples
    if (where.value.kind === 'take') gestures.add(where.value.gesture)
    recordings.push(describe(where.value, samples.value, `r${index + 1}`, file.path))
  }
  if (gestures.size === 0) {
    return fail('folder/empty', LIBRARY_FILE.noTakes(name))
  }
  return ok({
    library: {
      id: LIBRARY_ID,
      name,
      createdAt: UNKNOWN_TIME,
      generated: false,
      gestures: [...gestures].sort().map((gesture) => ({ id: gesture, name: gesture, note: '' })),
      target,
      training: { ...DEFAULT_TRAINING },
    },
    recordings,
  })
}

function readTakeCsv(file: TakeFile, target: Target): Result<SampleBlock> {
  if (file.text.replace(/^\ufeff/, '').startsWith(HEADER)) {
    return readSamplesCsv(file.text, file.path)
  }
  const preview = previewCsv(file.text, target, file.path)
  if (!preview.ok) return preview
  return applyMapping(file.text, preview.value.mapping, file.path)
}

function describe(
  where: TakePath,
  samples: SampleBlock,
  id: string,
  path: string,
): RecordingWithSamples {
  const count = sampleCount(samples)
  const durationMs = count === 0 ? 0 : (samples.tMs[count - 1] ?? 0) - (samples.tMs[0] ?? 0)
  const facts: Omit<Background, 'kind'> = {
    id,
    libraryId: LIBRARY_ID,
    testerCode: where.tester,
    hand: 'unknown',
    source: 'imported',
    recordedAt: UNKNOWN_TIME,
    device: {
      label: LIBRARY_FILE.csvFile,
      rateHz: durationMs > 0 ? ((count - 1) * 1000) / durationMs : 0,
      accelStepMps2: 0,
      gyroStepDps: 0,
      accelSign: 1,
      hasGyro: hasGyro(samples),
    },
    sampleCount: count,
    durationMs,
    gaps: [],
    note: path,
    deletedAt: null,
  }
  if (where.kind === 'background') return { recording: { ...facts, kind: 'background' }, samples }
  const take: Take = { ...facts, kind: 'take', gestureId: where.gesture, trim: null }
  return { recording: take, samples }
}

function hasGyro(samples: SampleBlock): boolean {
  return samples.values.some((value, at) => at % AXES >= 3 && value !== 0)
}
