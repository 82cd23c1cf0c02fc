import { strToU8 } from 'fflate'
import { crc32 } from '../format/crc32'
import { LIBRARY_JSON } from '../format/library-document'
import { fail, ok, type Result } from '../model/result'
import { BACKUP_FILE } from '../words/en/backup-file'
import type { ByteSource, CheckedStretch, LibraryPlace, Stretch } from './contents'
import { BACKUP_PATHS, type BackupManifest, parseManifest } from './manifest'
import { localClaim, signatures } from './whole-entries'

/** A backup without a readable directory is searched as a whole, in memory. */
const MAX_SEARCHED_BYTES = 512 * 1048576
const LOCAL = 0x04034b50
const LOCAL_SIZE = 30
const OUTER = /^(libraries|lists|items)\/(\d{2,4})[^/]*$/

export interface FoundParts {
  /** Whether it is a backup, by its manifest or by any header of its own. */
  isBackup: boolean
  manifest: BackupManifest | null
  places: LibraryPlace[]
}

/**
 * Where the libraries lie in a backup, or in a library file, which is then all of it. The manifest
 * comes first and gives all sizes, so that of a whole backup only the headers are read; of a damaged
 * one every byte is, and headers are looked for by their signature.
 * @returns failures 'backup/newer', 'backup/too-large'
 */
export async function findParts(source: ByteSource): Promise<Result<FoundParts>> {
  const head = await readManifest(source)
  if (head !== null && !head.ok && head.code === 'backup/newer') return head
  const manifest = head?.ok ? head.value.manifest : null
  if (head?.ok) {
    const places = await placesByManifest(source, head.value)
    if (places !== null) return ok({ isBackup: true, manifest, places })
  }
  if (source.size > MAX_SEARCHED_BYTES) {
    return fail('backup/too-large', BACKUP_FILE.tooLarge)
  }
  const bytes = await source.read({ start: 0, end: source.size })
  const parts = partsIn(bytes)
  const isBackup = manifest !== null || parts.some(({ number }) => number !== null)
  return ok({ isBackup, manifest, places: placesBySearch(parts, manifest) })
}

/** The manifest and where it ends; null when the file does not begin with one. */
async function readManifest(
  source: ByteSource,
): Promise<Result<{ manifest: BackupManifest; end: number }> | null> {
  const header = await headerAt(source, 0)
  if (header === null || header.path !== BACKUP_PATHS.manifest) return null
  const bytes = await readChecked(source, header.data)
  // Damage must not pass for a newer version.
  if (bytes === null) return null
  const manifest = parseManifest(bytes)
  return manifest.ok ? ok({ manifest: manifest.value, end: header.data.end }) : manifest
}

/** The bytes, or null when they are not as they were written. */
export async function readChecked(
  source: ByteSource,
  stretch: CheckedStretch | null,
): Promise<Uint8Array | null> {
  const bytes = stretch === null ? null : await source.read(stretch)
  return bytes !== null && crc32(bytes) === stretch?.crc ? bytes : null
}

/**
 * Follows the headers in the order of writing. A library whose own header is damaged lies where the
 * manifest's sizes put it, if a later header is where they put that one; null when none is: then
 * bytes are missing or too many. What lists and items lie behind a damaged header is searched for.
 */
async function placesByManifest(
  source: ByteSource,
  { manifest, end }: { manifest: BackupManifest; end: number },
): Promise<LibraryPlace[] | null> {
  let at = end
  let isSure = true
  const next = async (path: string): Promise<CheckedStretch | null> => {
    const header = await headerAt(source, at)
    if (header === null || header.path !== path) return null
    at = header.data.end
    isSure = true
    return header.data
  }
  const libraries: Stretch[] = []
  for (const { file, bytes } of manifest.libraries) {
    const start = at + LOCAL_SIZE + strToU8(file).length
    const told = await next(file)
    isSure = told !== null && told.end - told.start === bytes
    libraries.push({ start, end: start + bytes })
    at = start + bytes
    if (at > source.size) return null
  }
  const behind: Part[] = []
  for (const [index, { list }] of manifest.libraries.entries()) {
    const stretch = await next(list)
    if (stretch !== null) behind.push({ kind: 'lists', number: index + 1, stretch })
    else if (!isSure) return null
  }
  for (const [index, { items }] of manifest.libraries.entries()) {
    const stretch = items === null ? null : await next(items)
    if (stretch !== null) behind.push({ kind: 'items', number: index + 1, stretch })
  }
  const wanted = manifest.libraries.flatMap(({ list, items }) => [list, items ?? []].flat())
  if (behind.length < wanted.length) behind.push(...(await partsFrom(source, at)))
  return manifest.libraries.map(({ name }, index) => ({
    name,
    number: index + 1,
    library: libraries[index]!,
    list: stretchOf(behind, 'lists', index + 1),
    items: stretchOf(behind, 'items', index + 1),
  }))
}

/** Parts from a place on, or none when that is too much to be searched. */
async function partsFrom(source: ByteSource, start: number): Promise<Part[]> {
  if (source.size - start > MAX_SEARCHED_BYTES) return []
  const parts = partsIn(await source.read({ start, end: source.size }))
  return parts.map((part) => {
    const { stretch } = part
    return {
      ...part,
      stretch: { ...stretch, start: start + stretch.start, end: start + stretch.end },
    }
  })
}

async function headerAt(
  source: ByteSource,
  start: number,
): Promise<{ path: string; data: CheckedStretch } | null> {
  const head = await source.read({ start, end: Math.min(start + 500, source.size) })
  const view = new DataView(head.buffer, head.byteOffset, head.byteLength)
  if (head.length < LOCAL_SIZE || view.getUint32(0, true) !== LOCAL) return null
  const claim = localClaim(view, head, 0)
  if (claim === null || claim.deflated) return null
  const dataStart = start + claim.dataStart
  const data = { start: dataStart, end: dataStart + claim.packedSize, crc: claim.crc }
  return data.end > source.size ? null : { path: claim.path, data }
}

interface Part {
  kind: 'libraries' | 'lists' | 'items'
  number: number | null
  stretch: CheckedStretch
}

function stretchOf(
  parts: readonly Part[],
  kind: Part['kind'],
  number: number,
): CheckedStretch | null {
  return parts.find((part) => part.kind === kind && part.number === number)?.stretch ?? null
}

function placesBySearch(parts: readonly Part[], manifest: BackupManifest | null): LibraryPlace[] {
  const places = parts
    .filter(({ kind }) => kind === 'libraries')
    .map(({ number, stretch }) => ({
      name: number === null ? null : (manifest?.libraries[number - 1]?.name ?? null),
      library: stretch,
      number,
      list: number === null ? null : stretchOf(parts, 'lists', number),
      items: number === null ? null : stretchOf(parts, 'items', number),
    }))
  return withSpareLists(places, parts)
}

/**
 * Library files lie in a backup unpacked, so their own headers show: a new library begins where a
 * backup's header says so, or where a `library.json` comes up without one.
 */
function partsIn(bytes: Uint8Array): Part[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const parts: Part[] = []
  let hasList = false
  const begin = (part: Part, headerAt: number) => {
    const last = parts.at(-1)
    if (last !== undefined) last.stretch.end = Math.min(last.stretch.end, headerAt)
    parts.push(part)
    hasList = false
  }
  for (const at of signatures(bytes)) {
    if (at + LOCAL_SIZE > bytes.length || view.getUint32(at, true) !== LOCAL) continue
    const claim = localClaim(view, bytes, at)
    if (claim === null) continue
    const outer = OUTER.exec(claim.path)
    if (outer !== null) {
      const kind = outer[1] as Part['kind']
      // A library's size may be what is damaged: it goes on up to the next header.
      const size = kind === 'libraries' ? bytes.length : claim.packedSize
      const start = kind === 'libraries' ? libraryStart(view, at, claim.dataStart) : claim.dataStart
      const stretch = { start, end: Math.min(bytes.length, start + size), crc: claim.crc }
      begin({ kind, number: Number(outer[2]), stretch }, at)
      continue
    }
    const isList = claim.path === LIBRARY_JSON
    if (!isList && !claim.path.endsWith('.csv')) continue
    const isInLibrary = parts.at(-1)?.kind === 'libraries'
    if (!isInLibrary || (isList && hasList)) {
      begin(
        { kind: 'libraries', number: null, stretch: { start: at, end: bytes.length, crc: 0 } },
        at,
      )
    }
    if (isList) hasList = true
  }
  return parts.filter(({ stretch }) => stretch.end > stretch.start)
}

/** A library file begins with a header of its own; a damaged length points somewhere else. */
function libraryStart(view: DataView, at: number, told: number): number {
  const isThere = told + LOCAL_SIZE < view.byteLength && view.getUint32(told, true) === LOCAL
  return isThere ? told : at + LOCAL_SIZE + view.getUint16(at + 26, true)
}

/** A library whose number is lost may belong to a list that no other one claims, in their order. */
function withSpareLists(places: LibraryPlace[], parts: readonly Part[]): LibraryPlace[] {
  const taken = new Set(places.flatMap(({ list }) => (list === null ? [] : [list.start])))
  const spare = parts.filter(({ kind, stretch }) => kind === 'lists' && !taken.has(stretch.start))
  return places.map((place) =>
    place.list !== null ? place : { ...place, list: spare.shift()?.stretch ?? null },
  )
}
