import { SESSION_LIMITS } from '../shared/collect/session-file'
import { fail, ok, type Result } from '../shared/model/result'
import { SESSION_FOLDER } from '../shared/words/en/session-folder'
import { addFile } from './add-file'
import { namesIn } from './multistatus'
import { FILE_MS, type FolderAccess, SHORT_MS, sender } from './send'
import { statusFailure } from './trouble'

export type { FolderAccess } from './send'

/** A folder of session files that many phones share (WebDAV, RFC 4918). */
export interface SessionFolder {
  /** Names of the session files in it; other files are passed over. */
  list(): Promise<Result<string[]>>
  /** A session file, held against the digest in its name. */
  read(name: string): Promise<Result<Uint8Array>>
  /**
   * Adds a file; 'there' when the folder has it whole already. One that is whole is never written over. A
   * part of it, left by a broken connection, is: the digest in its name says what belongs there.
   */
  add(name: string, bytes: Uint8Array): Promise<Result<'stored' | 'there'>>
}

export interface FolderParts {
  fetch: typeof fetch
  parseXml: (text: string) => Document
  /** SHA-256 in hex, of which names hold the first 32 digits. */
  digest: (bytes: Uint8Array) => string
}

const SESSION_NAME = /^session-[\p{L}\p{M}\p{N}-]+-([0-9a-f]{32})\.zip$/u
const LISTING =
  '<?xml version="1.0"?><propfind xmlns="DAV:"><prop><resourcetype/></prop></propfind>'

export function openFolder(access: FolderAccess, parts: FolderParts): SessionFolder {
  const send = sender(access, parts.fetch)
  const read = async (name: string): Promise<Result<Uint8Array>> => {
    const sent = await send(name, { method: 'GET' }, FILE_MS)
    if (!sent.ok) return sent
    if (!sent.value.ok) return statusFailure(sent.value.status, 'read')
    const size = Number(sent.value.headers.get('Content-Length') ?? 0)
    if (size > SESSION_LIMITS.maxPackedBytes) return TOO_LARGE
    const bytes = await contentOf(sent.value)
    if (bytes === null) return CUT_OFF
    if (bytes.length > SESSION_LIMITS.maxPackedBytes) return TOO_LARGE
    // Another phone may be in the middle of sending it.
    return parts.digest(bytes).startsWith(digestOf(name)) ? ok(bytes) : CUT_OFF
  }

  return {
    async list() {
      const headers = { Depth: '1', 'Content-Type': 'application/xml' }
      const sent = await send('', { method: 'PROPFIND', headers, body: LISTING }, SHORT_MS)
      if (!sent.ok) return sent
      if (sent.value.status !== 207) return statusFailure(sent.value.status, 'list')
      const names = namesIn(parts.parseXml(await sent.value.text()))
      return ok(names.filter((name) => SESSION_NAME.test(name)).sort())
    },

    read,
    add: (name, bytes) => addFile({ send, read }, name, bytes),
  }
}

function digestOf(name: string): string {
  return SESSION_NAME.exec(name)?.[1] ?? 'no session'
}

async function contentOf(response: Response): Promise<Uint8Array | null> {
  try {
    return new Uint8Array(await response.arrayBuffer())
  } catch {
    return null
  }
}

const CUT_OFF = fail('webdav/cut', SESSION_FOLDER.notWhole)

const TOO_LARGE = fail('webdav/too-large', SESSION_FOLDER.tooLarge)
