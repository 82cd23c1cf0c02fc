import * as v from 'valibot'
import { checkEffect } from '../light/check-effect'
import { LIBRARY_FORMAT_VERSION } from '../model/library'
import { OWN_ANSWERS } from '../model/light'
import { type Failure, fail, ok, type Result } from '../model/result'
import { validateMounting } from '../target/validate-target'
import { type LibraryDocument, libraryDocumentSchema } from './library-schema'
import { parseJson } from './parse-json'

export const LIBRARY_FORMAT = 'movewright-library'

/** File inside the ZIP that holds everything but samples. */
export const LIBRARY_JSON = 'library.json'

const damaged = (where: string, what: string) =>
  fail('library/invalid', `${LIBRARY_JSON}, ${where}: ${what}.`)

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
    return fail('library/json', `${LIBRARY_JSON} is not JSON: ${reason}. Export the library again.`)
  }
  const version = checkVersion(raw)
  if (!version.ok) return version
  const checked = checkLibraryDocument(raw)
  if (checked.ok) return checked
  return fail(
    checked.code,
    `${checked.message} The file was changed or is damaged; export it again.`,
  )
}

/**
 * Checks a document that is already an object; also used before one is written, so that the failure
 * says what is wrong and where, and not what to do.
 */
export function checkLibraryDocument(raw: unknown): Result<LibraryDocument> {
  const parsed = v.safeParse(libraryDocumentSchema, raw, { abortEarly: true })
  if (!parsed.success) {
    const issue = parsed.issues[0]
    const expected = issue.expected ?? 'another value'
    return damaged(pathText(issue.path), `expected ${expected}, found ${issue.received}`)
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
    return fail(
      'library/format',
      `${LIBRARY_JSON} does not say "format": "${LIBRARY_FORMAT}" with a version, so this is not a Movewright library.`,
    )
  }
  if (head.output.formatVersion > LIBRARY_FORMAT_VERSION) {
    return fail(
      'library/newer',
      `This library file has format version ${head.output.formatVersion}; this Movewright reads up to ${LIBRARY_FORMAT_VERSION}. Update Movewright and import it again.`,
    )
  }
  return ok(null)
}

function pathText(path: readonly { key?: unknown }[] | undefined): string {
  if (path === undefined || path.length === 0) return 'top level'
  const parts = path.map(({ key }) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
  return parts.join('').replace(/^\./, '')
}

function checkReferences(document: LibraryDocument): Result<LibraryDocument> {
  const { library, recordings } = document
  const gestureIds = new Set(library.gestures.map((gesture) => gesture.id))
  if (gestureIds.size !== library.gestures.length) {
    return damaged('library.gestures', 'two gestures have the same id')
  }
  const mounting = validateMounting(library.target.mounting)
  if (!mounting.ok)
    return damaged('library.target.mounting', `found no rotation (${mounting.code})`)
  if (!isInstant(library.createdAt)) {
    return damaged('library.createdAt', `"${library.createdAt}" is not a date`)
  }
  const light = lightProblem(library)
  if (light !== null) return light
  const ids = new Set<string>()
  const files = new Set<string>()
  for (const [index, recording] of recordings.entries()) {
    const problem = recordingProblem(recording, library.id, gestureIds)
    if (problem !== null) return damaged(`recordings[${index}]`, problem)
    if (ids.has(recording.id)) return damaged(`recordings[${index}].id`, 'the id appears twice')
    if (files.has(recording.file)) {
      return damaged(`recordings[${index}].file`, 'two recordings share a file')
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
  if (recording.libraryId !== libraryId) return 'libraryId is not the id of this library'
  if (!isInstant(recording.recordedAt)) return `recordedAt "${recording.recordedAt}" is not a date`
  if (recording.deletedAt !== null && !isInstant(recording.deletedAt)) {
    return `deletedAt "${recording.deletedAt}" is not a date`
  }
  if (recording.gaps.some((gap) => gap.endMs < gap.startMs)) return 'a gap ends before it starts'
  if (recording.kind === 'background') return null
  if (!gestureIds.has(recording.gestureId)) {
    return `gestureId "${recording.gestureId}" is not a gesture of this library`
  }
  const { trim } = recording
  return trim !== null && trim.endMs < trim.startMs ? 'trim ends before it starts' : null
}

function isInstant(text: string): boolean {
  return Number.isFinite(Date.parse(text))
}
