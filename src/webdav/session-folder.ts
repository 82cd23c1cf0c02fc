import { SESSION_LIMITS } from '../shared/collect/session-file'
import { fail, ok, type Result } from '../shared/model/result'
import { SESSION_FOLDER } from '../shared/words/en/session-folder'
import { namesIn } from './multistatus'
import { statusFailure, unreachable } from './trouble'

/** A folder of session files that many phones share (WebDAV, RFC 4918). */
export interface SessionFolder {
  /** Names of the session files in it; other files are passed over. */
  list(): Promise<Result<string[]>>
  /** A session file, held against the digest in its name. */
  read(name: string): Promise<Result<Uint8Array>>
  /** Adds a file and never writes over one; 'there' when it is in the folder already. */
  add(name: string, bytes: Uint8Array): Promise<Result<'stored' | 'there'>>
}

export interface FolderAccess {
  /** As `folderAddress` gave it. */
  address: string
  /** Both empty for a folder without a password. */
  user: string
  password: string
}

export interface FolderParts {
  fetch: typeof fetch
  parseXml: (text: string) => Document
  /** SHA-256 in hex, of which names hold the first 32 digits. */
  digest: (bytes: Uint8Array) => string
}

const SESSION_NAME = /^session-[\p{L}\p{M}\p{N}-]+-([0-9a-f]{32})\.zip$/u
const LIST_MS = 20_000
const FILE_MS = 120_000
const LISTING =
  '<?xml version="1.0"?><propfind xmlns="DAV:"><prop><resourcetype/></prop></propfind>'

export function openFolder(access: FolderAccess, parts: FolderParts): SessionFolder {
  const send = async (name: string, init: RequestInit, timeoutMs: number) => {
    const headers = new Headers(init.headers)
    const { user, password, address } = access
    if (user !== '') headers.set('Authorization', `Basic ${base64(`${user}:${password}`)}`)
    const signal = AbortSignal.timeout(timeoutMs)
    const options = { ...init, headers, signal, cache: 'no-store', redirect: 'error' } as const
    try {
      return ok(await parts.fetch(new URL(encodeURIComponent(name), address), options))
    } catch (error) {
      return unreachable(error, address)
    }
  }

  return {
    async list() {
      const headers = { Depth: '1', 'Content-Type': 'application/xml' }
      const sent = await send('', { method: 'PROPFIND', headers, body: LISTING }, LIST_MS)
      if (!sent.ok) return sent
      if (sent.value.status !== 207) return statusFailure(sent.value.status, 'list')
      const names = namesIn(parts.parseXml(await sent.value.text()))
      return ok(names.filter((name) => SESSION_NAME.test(name)).sort())
    },

    async read(name) {
      const sent = await send(name, { method: 'GET' }, FILE_MS)
      if (!sent.ok) return sent
      if (!sent.value.ok) return statusFailure(sent.value.status, 'read')
      const size = Number(sent.value.headers.get('Content-Length') ?? 0)
      if (size > SESSION_LIMITS.maxPackedBytes) return tooLarge(name)
      const bytes = await contentOf(sent.value)
      if (bytes === null) return cutOff(name)
      if (bytes.length > SESSION_LIMITS.maxPackedBytes) return tooLarge(name)
      // Another phone may be in the middle of sending it.
      return parts.digest(bytes).startsWith(digestOf(name)) ? ok(bytes) : cutOff(name)
    },

    async add(name, bytes) {
      const found = await send(name, { method: 'HEAD' }, LIST_MS)
      if (!found.ok) return found
      if (found.value.ok) return ok('there')
      if (found.value.status !== 404) return statusFailure(found.value.status, 'write')
      const headers = { 'If-None-Match': '*', 'Content-Type': 'application/zip' }
      const body = bytes as Uint8Array<ArrayBuffer>
      const sent = await send(name, { method: 'PUT', headers, body }, FILE_MS)
      if (!sent.ok) return sent
      // Precondition failed: another phone was quicker with the same file.
      if (sent.value.status === 412) return ok('there')
      return sent.value.ok ? ok('stored') : statusFailure(sent.value.status, 'write')
    },
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

const cutOff = (name: string) => fail('webdav/cut', SESSION_FOLDER.notWhole(name))

const tooLarge = (name: string) => fail('webdav/too-large', SESSION_FOLDER.tooLarge(name))

/** Name and password may hold any characters: Basic authentication sends UTF-8 (RFC 7617). */
function base64(text: string): string {
  return btoa(String.fromCharCode(...new TextEncoder().encode(text)))
}
