import { strFromU8, strToU8 } from 'fflate'
import type { FullLibrary, RecordingWithSamples } from '../model/library'
import { LIBRARY_FORMAT_VERSION } from '../model/library'
import { fail, ok, type Result } from '../model/result'
import { sampleCount } from '../model/sample'
import { recordingPaths } from './file-names'
import {
  checkLibraryDocument,
  LIBRARY_FORMAT,
  LIBRARY_JSON,
  parseLibraryDocument,
} from './library-document'
import type { LibraryDocument } from './library-schema'
import { readSamplesCsv, writeSamplesCsv } from './samples-csv'
import { openZip, type ZipEntry, type ZipLimits } from './zip-read'
import { writeZip } from './zip-write'

const MIB = 1048576

/** An hour at 400 Hz is about 100 MiB of CSV; a fair's library of phone takes about 20 MiB. */
export const LIBRARY_LIMITS: ZipLimits = {
  maxPackedBytes: 256 * MIB,
  maxEntries: 25_000,
  maxEntryBytes: 128 * MIB,
  maxTotalBytes: 512 * MIB,
}

/**
 * A library with all its recordings as a library file (FORMAT.md): a ZIP of `library.json` and one
 * CSV a recording. The same library gives the same bytes.
 * @throws RangeError when the library breaks its own rules, such as a sample that is not finite;
 *   the message says where. A library made through the app never does.
 */
export function writeLibraryFile(full: FullLibrary): Uint8Array {
  const facts = full.recordings.map(({ recording }) => recording)
  const paths = recordingPaths(full.library.gestures, facts)
  const document: LibraryDocument = {
    format: LIBRARY_FORMAT,
    formatVersion: LIBRARY_FORMAT_VERSION,
    library: full.library,
    recordings: facts.map((recording, index) => ({ ...recording, file: paths[index] ?? '' })),
  }
  const checked = checkLibraryDocument(document)
  if (!checked.ok) throw new RangeError(checked.message)
  const files: [string, Uint8Array][] = [
    [LIBRARY_JSON, strToU8(`${JSON.stringify(checked.value, null, 2)}\n`)],
  ]
  for (const [index, { samples, recording }] of full.recordings.entries()) {
    if (recording.sampleCount !== sampleCount(samples)) {
      throw new RangeError(
        `Recording ${recording.id} says ${recording.sampleCount} samples and has ${sampleCount(samples)}.`,
      )
    }
    files.push([paths[index] ?? '', strToU8(writeSamplesCsv(samples))])
  }
  return writeZip(files)
}

/**
 * Reads a library file that anybody may have made or changed. All of it or nothing: the first
 * thing that is wrong is named with file, row and reason. Files that `library.json` does not name
 * are passed over, as operating systems add their own.
 */
export function readLibraryFile(bytes: Uint8Array): Result<FullLibrary> {
  const entries = openZip(bytes, LIBRARY_LIMITS)
  if (!entries.ok) return entries
  const json = readText(entries.value, LIBRARY_JSON)
  if (!json.ok) return json
  const document = parseLibraryDocument(json.value)
  if (!document.ok) return document
  const recordings: RecordingWithSamples[] = []
  for (const described of document.value.recordings) {
    const item = readRecording(entries.value, described)
    if (!item.ok) return item
    recordings.push(item.value)
  }
  return ok({ library: document.value.library, recordings })
}

function readRecording(
  entries: ReadonlyMap<string, ZipEntry>,
  described: LibraryDocument['recordings'][number],
): Result<RecordingWithSamples> {
  const { file, ...recording } = described
  const text = readText(entries, file)
  if (!text.ok) return text
  const samples = readSamplesCsv(text.value, file)
  if (!samples.ok) return samples
  const found = sampleCount(samples.value)
  if (found !== recording.sampleCount) {
    return fail(
      'library/count',
      `${file} has ${found} samples; ${LIBRARY_JSON} says ${recording.sampleCount}. Rows are missing or were added; export it again.`,
    )
  }
  return ok({ recording, samples: samples.value })
}

function readText(entries: ReadonlyMap<string, ZipEntry>, path: string): Result<string> {
  const entry = entries.get(path)
  if (entry === undefined) {
    return fail(
      'library/missing',
      `${path} is missing in the ZIP. Choose a Movewright library file.`,
    )
  }
  const bytes = entry.read()
  if (!bytes.ok) return bytes
  const text = strFromU8(bytes.value)
  // Bytes that are not UTF-8 become U+FFFD, which does not encode back to them.
  if (text.includes('\ufffd') && strToU8(text).length !== bytes.value.length) {
    return fail('library/encoding', `${path} is not UTF-8 text. Save it as UTF-8.`)
  }
  return ok(text)
}
