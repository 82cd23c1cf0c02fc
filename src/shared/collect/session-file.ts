import { strToU8 } from 'fflate'
import * as v from 'valibot'
import { sessionSchema } from '../format/collect-schema'
import { fileWord, recordingPaths } from '../format/file-names'
import { recordingSchema } from '../format/library-schema'
import { parseJson } from '../format/parse-json'
import { writeSamplesCsv } from '../format/samples-csv'
import { sha256Hex } from '../format/sha256'
import { openZip, type ZipLimits } from '../format/zip-read'
import { readZipRecording, readZipText } from '../format/zip-recordings'
import { writeZip } from '../format/zip-write'
import type { RecordingWithSamples } from '../model/library'
import { fail, ok, type Result } from '../model/result'
import { SESSION_FILE } from '../words/en/session-file'
import { ZIP_TROUBLE } from '../words/en/zip-trouble'
import { contentId } from './content-id'
import type { SessionFile } from './session'

const FORMAT = 'movewright-session'
const VERSION = 1

/** Document inside the ZIP that holds everything but samples. */
export const SESSION_JSON = 'session.json'

const MIB = 1048576

/** An hour of a phone's readings is about 15 MiB of CSV. */
export const SESSION_LIMITS: ZipLimits = {
  maxPackedBytes: 32 * MIB,
  maxEntries: 2_000,
  maxEntryBytes: 32 * MIB,
  maxTotalBytes: 128 * MIB,
}

const documentSchema = v.strictObject({
  format: v.literal(FORMAT),
  formatVersion: v.literal(VERSION),
  session: sessionSchema,
  recordings: v.pipe(v.array(recordingSchema), v.maxLength(1_000)),
})

/**
 * A session as a file (FORMAT.md): a ZIP of `session.json` and one CSV a recording, every recording
 * with its content id. The same session gives the same bytes, wherever it is written.
 * @throws RangeError when the session breaks its own rules; one made through the app never does
 */
export function writeSessionFile({ session, recordings }: SessionFile): Uint8Array {
  const gestures = session.gestures.map(({ id, name }) => ({ id, name, note: '' }))
  const paths = recordingPaths(
    gestures,
    recordings.map(({ recording }) => recording),
  )
  const document = {
    format: FORMAT,
    formatVersion: VERSION,
    session,
    recordings: recordings.map(({ recording, samples }, index) => ({
      ...recording,
      sessionId: session.id,
      contentId: contentId(samples),
      file: paths[index],
    })),
  }
  const checked = v.safeParse(documentSchema, document)
  if (!checked.success) throw new RangeError(issueText(checked.issues[0]))
  const json = strToU8(`${JSON.stringify(checked.output, null, 2)}\n`)
  const files = recordings.map(
    ({ samples }, index) => [paths[index] ?? '', strToU8(writeSamplesCsv(samples))] as const,
  )
  return writeZip([[SESSION_JSON, json], ...files])
}

/**
 * Name of a session's file by its content: two files of one name are the same, and a folder that many
 * phones write to never has one file over another.
 */
export function sessionFileName(session: SessionFile['session'], bytes: Uint8Array): string {
  return `session-${fileWord(session.testerCode, 'tester')}-${sha256Hex(bytes).slice(0, 32)}.zip`
}

/**
 * Reads a session file that anybody may have made or changed; all of it or nothing.
 * @returns failures 'session/empty', 'session/no-document', 'session/format', 'session/newer',
 *   'session/invalid', 'library/altered', and those of the ZIP and of CSV; each says what to do
 */
export function readSessionFile(bytes: Uint8Array): Result<SessionFile> {
  if (bytes.length === 0) {
    return fail('session/empty', SESSION_FILE.empty)
  }
  const entries = openZip(bytes, SESSION_LIMITS)
  if (!entries.ok) return entries
  if (!entries.value.has(SESSION_JSON)) {
    return fail('session/no-document', ZIP_TROUBLE.missing(SESSION_JSON))
  }
  const json = readZipText(entries.value, SESSION_JSON)
  if (!json.ok) return json
  const document = parseDocument(json.value)
  if (!document.ok) return document
  const { session } = document.value
  const known = new Set(session.gestures.map(({ id }) => id))
  const recordings: RecordingWithSamples[] = []
  for (const described of document.value.recordings) {
    if (described.sessionId !== session.id || described.contentId === undefined) {
      return invalid(SESSION_FILE.otherSession(described.file))
    }
    if (described.kind === 'take' && !known.has(described.gestureId)) {
      return invalid(SESSION_FILE.noSuchGesture(described.file))
    }
    const item = readZipRecording(entries.value, described, SESSION_JSON)
    if (!item.ok) return item
    recordings.push(item.value)
  }
  return ok({ session, recordings })
}

const invalid = (what: string) => fail('session/invalid', SESSION_FILE.invalid(SESSION_JSON, what))

function parseDocument(json: string): Result<v.InferOutput<typeof documentSchema>> {
  let raw: unknown
  try {
    raw = parseJson(json)
  } catch {
    return invalid(SESSION_FILE.notJson)
  }
  const head = v.safeParse(v.object({ format: v.literal(FORMAT), formatVersion: v.number() }), raw)
  if (!head.success) {
    return fail('session/format', SESSION_FILE.noSession(SESSION_JSON))
  }
  if (head.output.formatVersion > VERSION) {
    return fail('session/newer', SESSION_FILE.newer(head.output.formatVersion, VERSION))
  }
  const parsed = v.safeParse(documentSchema, raw, { abortEarly: true })
  return parsed.success ? ok(parsed.output) : invalid(issueText(parsed.issues[0]))
}

function issueText(issue: v.BaseIssue<unknown>): string {
  return SESSION_FILE.unexpected({
    place: v.getDotPath(issue),
    expected: issue.expected,
    found: issue.received,
  })
}
