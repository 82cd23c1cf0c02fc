import { fail, ok, type Result } from '../shared/model/result'
import { SESSION_FOLDER } from '../shared/words/en/session-folder'

/** What the page may connect to: its own origin, and what its build allowed. */
export interface PagePolicy {
  /** Address of the page. */
  page: string
  /** `content` of the page's policy; empty where it has none, as in development. */
  policy: string
}

/**
 * The folder a person names, checked before anything is sent: an address of http or https without
 * name and password, which this page's policy lets it reach.
 * @returns the address with '/' at its end; failures 'webdav/address', 'webdav/insecure',
 *   'webdav/policy'
 */
export function folderAddress(text: string, { page, policy }: PagePolicy): Result<string> {
  let url: URL
  try {
    url = new URL(text.trim(), page)
  } catch {
    return wrongAddress(text)
  }
  if (!/^https?:$/.test(url.protocol) || url.username !== '' || url.search + url.hash !== '') {
    return wrongAddress(text)
  }
  const own = new URL(page)
  if (own.protocol === 'https:' && url.protocol === 'http:') {
    return fail('webdav/insecure', SESSION_FOLDER.mixed)
  }
  if (url.origin !== own.origin && !mayConnect(policy, url.origin)) {
    return fail('webdav/policy', SESSION_FOLDER.otherOrigin(own.origin, url.origin))
  }
  if (!url.pathname.endsWith('/')) url.pathname += '/'
  return ok(url.href)
}

function wrongAddress(text: string) {
  return fail('webdav/address', SESSION_FOLDER.noAddress(text))
}

function mayConnect(policy: string, origin: string): boolean {
  const connect = policy.split(';').find((part) => part.trim().startsWith('connect-src '))
  return connect === undefined || connect.trim().split(/\s+/).includes(origin)
}
