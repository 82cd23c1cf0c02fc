import { strFromU8, strToU8 } from 'fflate'
import { contentId } from '../collect/content-id'
import type { Recording, RecordingWithSamples } from '../model/library'
import { fail, ok, type Result } from '../model/result'
import { sampleCount } from '../model/sample'
import { ZIP_TROUBLE } from '../words/en/zip-trouble'
import { readSamplesCsv } from './samples-csv'
import type { ZipEntry } from './zip-read'

type Entries = ReadonlyMap<string, ZipEntry>

/**
 * The samples of one recording that the document of a ZIP describes, held against it.
 * @param document name of the document, for messages
 * @returns failures 'library/count', 'library/altered', and those of reading
 */
export function readZipRecording<R extends Recording>(
  entries: Entries,
  { file, ...facts }: R & { file: string },
  document: string,
): Result<RecordingWithSamples> {
  const recording = facts as unknown as R
  const text = readZipText(entries, file)
  if (!text.ok) return text
  const samples = readSamplesCsv(text.value, file)
  if (!samples.ok) return samples
  const found = sampleCount(samples.value)
  if (found !== recording.sampleCount) {
    return fail(
      'library/count',
      ZIP_TROUBLE.otherCount({ file, found, document, says: recording.sampleCount }),
    )
  }
  if (recording.contentId !== undefined && recording.contentId !== contentId(samples.value)) {
    return fail('library/altered', ZIP_TROUBLE.altered(file, document))
  }
  return ok({ recording, samples: samples.value })
}

/** A text inside a ZIP. */
export function readZipText(entries: Entries, path: string): Result<string> {
  const entry = entries.get(path)
  if (entry === undefined) {
    return fail('library/missing', ZIP_TROUBLE.missing(path))
  }
  const bytes = entry.read()
  if (!bytes.ok) return bytes
  const text = strFromU8(bytes.value)
  // Bytes that are not UTF-8 become U+FFFD, which does not encode back to them.
  if (text.includes('\ufffd') && strToU8(text).length !== bytes.value.length) {
    return fail('library/encoding', ZIP_TROUBLE.notUtf8(path))
  }
  return ok(text)
}
