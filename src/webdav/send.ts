import { ok, type Result } from '../shared/model/result'
import { unreachable } from './trouble'

export interface FolderAccess {
  /** As `folderAddress` gave it. */
  address: string
  /** Both empty for a folder without a password. */
  user: string
  password: string
}

/** One request about a file of the folder; '' is the folder itself. */
export type Send = (name: string, init: RequestInit, timeoutMs: number) => Promise<Result<Response>>

/** For an answer without content. */
export const SHORT_MS = 20_000
/** For a file that goes up or comes down. */
export const FILE_MS = 120_000

/** Failures 'webdav/late' and 'webdav/network'; whatever the server answers is no failure here. */
export function sender(access: FolderAccess, fetchIt: typeof fetch): Send {
  const { user, password, address } = access
  return async (name, init, timeoutMs) => {
    const headers = new Headers(init.headers)
    if (user !== '') headers.set('Authorization', `Basic ${base64(`${user}:${password}`)}`)
    const signal = AbortSignal.timeout(timeoutMs)
    const options = { ...init, headers, signal, cache: 'no-store', redirect: 'error' } as const
    try {
      return ok(await fetchIt(new URL(encodeURIComponent(name), address), options))
    } catch (error) {
      return unreachable(error, address)
    }
  }
}

/** Name and password may hold any characters: Basic authentication sends UTF-8 (RFC 7617). */
function base64(text: string): string {
  return btoa(String.fromCharCode(...new TextEncoder().encode(text)))
}
