import * as v from 'valibot'
import { checkEffect } from '../light/check-effect'
import { LIBRARY_FORMAT_VERSION } from '../model/library'
import { OWN_ANSWERS } from '../model/light'
import { type Failure, fail, ok, type Result } from '../model/result'
import { validateMounting } from '../target/validate-target'
import { LIBRARY_FILE } from '../words/en/library-file'
import { type LibraryDocument, libraryDocumentSchema } from './library-schema'
import { parseJson } from './parse-json'

export const LIBRARY_FORMAT = 'movewright-library'

/** File inside the ZIP that holds everything but samples. */
export const LIBRARY_JSON = 'library.json'

const damaged = (where: string, what: string) =>
  fail('library/invalid', LIBRARY_FILE.damaged(LIBRARY_JSON, where, what))

/**
 * Reads and checks `library.json` as a whole: shape, ranges, and that all references meet.
 * @returns failures 'library/json', 'library/format', 'library/newer', 'library/invalid'
 */
export function parseLibraryDocument(json: string): Result<LibraryDocument> {
  let raw: unknown
  try {
    raw = parseJson(json)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    return fail('library/json', LIBRARY_FILE.notJson(LIBRARY_JSON, reason))
  }
  const version = checkVersion(raw)
  if (!version.ok) return version
  const checked = checkLibraryDocument(raw)
  if (checked.ok) return checked
  return fail(checked.code, LIBRARY_FILE.changed(checked.message))
}

/**
 * Checks a document that is already an object; also used before one is written, so that the failure
 * says what is wrong and where, and not what to do.
 */
export function checkLibraryDocument(raw: unknown): Result<LibraryDocument> {
  const parsed = v.safeParse(libraryDocumentSchema, raw, { abortEarly: true })
  if (!parsed.success) {
    const issue = parsed.issues[0]
    return damaged(pathText(issue.path), LIBRARY_FILE.unexpected(issue.expected, issue.received))
  }
  return checkReferences(parsed.output)
}

/** The version is looked at before the rest, since a newer file may look quite different. */
function checkVersion(raw: unknown): Result<null> {
  const head = v.safeParse(
    v.object({ format: v.literal(LIBRARY_FORMAT), formatVersion: v.number() }),
    raw,
  )
  if (!head.success) {
    return fail('library/format', LIBRARY_FILE.noFormat(LIBRARY_JSON, LIBRARY_FORMAT))
  }
  if (head.output.formatVersion > LIBRARY_FORMAT_VERSION) {
    return fail(
      'library/newer',
      LIBRARY_FILE.newer(head.output.formatVersion, LIBRARY_FORMAT_VERSION),
    )
  }
  return ok(null)
}

function pathText(path: readonly { key?: unknown }[] | undefined): string {
  if (path === undefined || path.length === 0) return LIBRARY_FILE.topLevel
  const parts = path.map(({ key }) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
  return parts.join('').replace(/^\./, '')
}

function checkReferences(document: LibraryDocument): Result<LibraryDocument> {
  const { library, recordings } = document
  const gestureIds = new Set(library.gestures.map((gesture) => gesture.id))
  if (gestureIds.size !== library.gestures.length) {
    return damaged('library.gestures', LIBRARY_FILE.gestureTwice)
  }
  const mounting = validateMounting(library.target.mounting)
  if (!mounting.ok)
    return damaged('library.target.mounting', LIBRARY_FILE.noRotation(mounting.code))
  if (!isInstant(library.createdAt)) {
    return damaged('library.createdAt', LIBRARY_FILE.noDate(library.createdAt))
  }
  const light = lightProblem(library)
  if (light !== null) return light
  const ids = new Set<string>()
  const files = new Set<string>()
  for (const [index, recording] of recordings.entries()) {
    const problem = recordingProblem(recording, library.id, gestureIds)
    if (problem !== null) return damaged(`recordings[${index}]`, problem)
    if (ids.has(recording.id)) return damaged(`recordings[${index}].id`, LIBRARY_FILE.idTwice)
    if (files.has(recording.file)) {
      return damaged(`recordings[${index}].file`, LIBRARY_FILE.fileTwice)
    }
    ids.add(recording.id)
    files.add(recording.file)
  }
  return ok(document)
}

/** Effects whose parts are each in range, but which no player would take. */
function lightProblem({ gestures, light }: LibraryDocument['library']): Failure | null {
  const places = gestures.map(({ answer }, i) => [`library.gestures[${i}].answer`, answer] as const)
  const own = OWN_ANSWERS.map(
    (key) => [`library.light.answers.${key}`, light?.answers[key]] as const,
  )
  for (const [place, answer] of [...places, ...own]) {
    const checked = answer === undefined ? null : checkEffect(answer.light)
    if (checked?.ok === false) return damaged(place, checked.message.replace(/\.$/, ''))
  }
  return null
}

function recordingProblem(
  recording: LibraryDocument['recordings'][number],
  libraryId: string,
  gestureIds: ReadonlySet<string>,
): string | null {
  if (recording.libraryId !== libraryId) return LIBRARY_FILE.otherLibrary
  if (!isInstant(recording.recordedAt))
    return LIBRARY_FILE.fieldNoDate('recordedAt', recording.recordedAt)
  if (recording.deletedAt !== null && !isInstant(recording.deletedAt)) {
    return LIBRARY_FILE.fieldNoDate('deletedAt', recording.deletedAt)
  }
  if (recording.gaps.some((gap) => gap.endMs < gap.startMs)) return LIBRARY_FILE.gapBackwards
  if (recording.kind === 'background') return null
  if (!gestureIds.has(recording.gestureId)) {
    return LIBRARY_FILE.noSuchGesture(recording.gestureId)
  }
  const { trim } = recording
  return trim !== null && trim.endMs < trim.startMs ? LIBRARY_FILE.trimBackwards : null
}

function isInstant(text: string): boolean {
  return Number.isFinite(Date.parse(text))
}
