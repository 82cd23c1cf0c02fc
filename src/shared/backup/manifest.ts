import { strFromU8, strToU8 } from 'fflate'
import * as v from 'valibot'
import { fail, ok, type Result } from '../model/result'
import { BACKUP_FILE } from '../words/en/backup-file'

export const BACKUP_FORMAT = 'movewright-backup'
/** Counted apart from the version of library files, which a backup holds as they are. */
export const BACKUP_FORMAT_VERSION = 1

/** Folders and files of a backup. `manifest` comes first, lists and items after all libraries. */
export const BACKUP_PATHS = {
  manifest: 'movewright-backup.json',
  library: (number: number, word: string) => `libraries/${twoDigits(number)}-${word}.zip`,
  list: (number: number) => `lists/${twoDigits(number)}.json`,
  items: (number: number) => `items/${twoDigits(number)}.json`,
}

const count = v.pipe(v.number(), v.integer(), v.minValue(0))
const path = v.pipe(v.string(), v.minLength(1), v.maxLength(400))
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))

const library = v.strictObject({
  id: v.pipe(v.string(), v.minLength(1), v.maxLength(100)),
  name: v.pipe(v.string(), v.minLength(1), v.maxLength(100)),
  /** Library file, as exported by itself; stored, not packed once more. */
  file: path,
  bytes: count,
  sha256: hash,
  takes: count,
  backgrounds: count,
  /** The same `library.json` as in the file: what a damaged file held is still known. */
  list: path,
  /** Sessions and kept models, or null. */
  items: v.nullable(path),
})

const manifest = v.strictObject({
  format: v.literal(BACKUP_FORMAT),
  formatVersion: v.literal(BACKUP_FORMAT_VERSION),
  /** RFC 3339 in UTC. */
  madeAt: v.pipe(v.string(), v.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?Z$/)),
  libraries: v.pipe(v.array(library), v.maxLength(1000)),
})

/** What a backup says it holds. */
export type BackupManifest = v.InferOutput<typeof manifest>

export function manifestBytes(value: BackupManifest): Uint8Array {
  return strToU8(`${JSON.stringify(value, null, 2)}\n`)
}

/** @returns failures 'backup/newer', 'backup/damaged' */
export function parseManifest(bytes: Uint8Array): Result<BackupManifest> {
  let raw: unknown
  try {
    raw = JSON.parse(strFromU8(bytes))
  } catch {
    raw = null
  }
  const head = v.safeParse(v.object({ formatVersion: v.number() }), raw)
  if (head.success && head.output.formatVersion > BACKUP_FORMAT_VERSION) {
    return fail('backup/newer', BACKUP_FILE.newer(head.output.formatVersion, BACKUP_FORMAT_VERSION))
  }
  const parsed = v.safeParse(manifest, raw)
  if (parsed.success) return ok(parsed.output)
  return fail('backup/damaged', BACKUP_FILE.listDamaged)
}

function twoDigits(number: number): string {
  return String(number).padStart(2, '0')
}
