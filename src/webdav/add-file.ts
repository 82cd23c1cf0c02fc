import { fail, ok, type Result } from '../shared/model/result'
import { SESSION_FOLDER } from '../shared/words/en/session-folder'
import { FILE_MS, type Send, SHORT_MS } from './send'
import { statusFailure } from './trouble'

export interface FileAccess {
  send: Send
  /** As `SessionFolder.read`. */
  read(name: string): Promise<Result<Uint8Array>>
}

/**
 * What lies under a name: the whole file, none, or something else, as a part that a broken connection left
 * or a start page that a host gives for every address. 'untold' when the server does not say.
 */
type Found = 'whole' | 'none' | 'other' | 'untold'

const WHAT_READING_FOUND: Readonly<Record<string, Found>> = {
  'webdav/cut': 'other',
  'webdav/too-large': 'other',
  'webdav/missing': 'none',
}

/**
 * Sends a file unless it is there whole, and looks whether it arrived.
 * @returns 'there' when another phone, or this one before, had sent it already; failure 'webdav/partly'
 *   when the server took it and does not have all of it
 */
export async function addFile(
  access: FileAccess,
  name: string,
  bytes: Uint8Array,
): Promise<Result<'stored' | 'there'>> {
  const before = await look(access, name, bytes)
  if (!before.ok) return before
  if (before.value === 'whole') return ok('there')
  let sent = await put(access, name, bytes, before.value === 'other')
  if (sent.ok && sent.value.status === 412) {
    // Precondition failed: another phone was quicker with the same file, or was cut off at it.
    const other = await look(access, name, bytes)
    if (!other.ok) return other
    if (other.value === 'whole') return ok('there')
    sent = await put(access, name, bytes, true)
  }
  if (!sent.ok) return sent
  if (!sent.value.ok) return statusFailure(sent.value.status, 'write')
  const after = await look(access, name, bytes)
  const isMissing = after.ok && (after.value === 'other' || after.value === 'none')
  // Where it cannot be looked, the server's word for having stored it is all there is.
  return isMissing ? fail('webdav/partly', SESSION_FOLDER.arrivedPartly(name)) : ok('stored')
}

function put({ send }: FileAccess, name: string, bytes: Uint8Array, isOver: boolean) {
  const headers = new Headers({ 'Content-Type': 'application/zip' })
  if (!isOver) headers.set('If-None-Match', '*')
  const body = bytes as Uint8Array<ArrayBuffer>
  return send(name, { method: 'PUT', headers, body }, FILE_MS)
}

async function look(access: FileAccess, name: string, bytes: Uint8Array): Promise<Result<Found>> {
  const head = await access.send(name, { method: 'HEAD' }, SHORT_MS)
  if (!head.ok) return head
  const { status, headers } = head.value
  if (status === 404) return ok('none')
  const isAnswered = head.value.ok
  if (isAnswered && headers.get('Content-Length') === String(bytes.length)) return ok('whole')
  // Servers need not know HEAD.
  if (!isAnswered && status !== 405 && status !== 501) return statusFailure(status, 'write')
  // The length may be missing, or that of a compressed answer: content and digest decide.
  const content = await access.read(name)
  return ok(content.ok ? 'whole' : (WHAT_READING_FOUND[content.code] ?? 'untold'))
}
