import { strToU8 } from 'fflate'
import type { FullLibrary, RecordingWithSamples } from '../model/library'
import { LIBRARY_FORMAT_VERSION } from '../model/library'
import { fail, ok, type Result } from '../model/result'
import { sampleCount } from '../model/sample'
import type { OnProgress } from '../protocol/recogniser'
import { PROGRESS } from '../words/en/progress'
import { ZIP_TROUBLE } from '../words/en/zip-trouble'
import { recordingPaths } from './file-names'
import { joinBytes } from './join-bytes'
import {
  checkLibraryDocument,
  LIBRARY_FORMAT,
  LIBRARY_JSON,
  parseLibraryDocument,
} from './library-document'
import type { LibraryDocument } from './library-schema'
import { writeSamplesCsv } from './samples-csv'
import { ZipBuilder } from './zip-build'
import { openZip, type ZipLimits } from './zip-read'
import { readZipRecording, readZipText } from './zip-recordings'

const MIB = 1048576

/** An hour at 400 Hz is about 100 MiB of CSV; a fair's library of phone takes about 20 MiB. */
export const LIBRARY_LIMITS: ZipLimits = {
  maxPackedBytes: 256 * MIB,
  maxEntries: 25_000,
  maxEntryBytes: 128 * MIB,
  maxTotalBytes: 512 * MIB,
}

/** Progress is told after this many recordings, and at the end. */
const TOLD_EVERY = 20

/**
 * A library with all its recordings as a library file (FORMAT.md): a ZIP of `library.json` and one
 * CSV a recording. The same library gives the same bytes. Recordings are packed one after the
 * other, so that the text of only one is ever in memory.
 * @throws RangeError when the library breaks its own rules, such as a sample that is not finite;
 *   the message says where. A library made through the app never does.
 */
export function writeLibraryFile(full: FullLibrary, onProgress?: OnProgress): Uint8Array {
  const { document, json } = libraryJson(full)
  const zip = new ZipBuilder()
  zip.deflate(LIBRARY_JSON, json)
  const total = full.recordings.length
  for (const [index, { samples, recording }] of full.recordings.entries()) {
    if (recording.sampleCount !== sampleCount(samples)) {
      throw new RangeError(
        `Recording ${recording.id} says ${recording.sampleCount} samples and has ${sampleCount(samples)}.`,
      )
    }
    const path = document.recordings[index]?.file ?? ''
    zip.deflate(path, strToU8(writeSamplesCsv(samples)))
    const done = index + 1
    if (done % TOLD_EVERY === 0 || done === total)
      onProgress?.({ done, total, what: PROGRESS.writing })
  }
  zip.end()
  return joinBytes(zip.pieces)
}

/** `library.json` of a library: everything but samples, checked. @throws RangeError as above */
export function libraryJson(full: FullLibrary): { document: LibraryDocument; json: Uint8Array } {
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
  return {
    document: checked.value,
    json: strToU8(`${JSON.stringify(checked.value, null, 2)}\n`),
  }
}

/**
 * Reads a library file that anybody may have made or changed. All of it or nothing: the first
 * thing that is wrong is named with file, row and reason. Files that `library.json` does not name
 * are passed over, as operating systems add their own.
 */
export function readLibraryFile(bytes: Uint8Array, onProgress?: OnProgress): Result<FullLibrary> {
  const entries = openZip(bytes, LIBRARY_LIMITS)
  if (!entries.ok) return entries
  if (!entries.value.has(LIBRARY_JSON)) {
    return fail('library/no-document', ZIP_TROUBLE.missing(LIBRARY_JSON))
  }
  const json = readZipText(entries.value, LIBRARY_JSON)
  if (!json.ok) return json
  const document = parseLibraryDocument(json.value)
  if (!document.ok) return document
  const recordings: RecordingWithSamples[] = []
  const total = document.value.recordings.length
  for (const described of document.value.recordings) {
    const item = readZipRecording(entries.value, described, LIBRARY_JSON)
    if (!item.ok) return item
    recordings.push(item.value)
    const done = recordings.length
    if (done % TOLD_EVERY === 0 || done === total)
      onProgress?.({ done, total, what: PROGRESS.reading })
  }
  return ok({ library: document.value.library, recordings })
}
