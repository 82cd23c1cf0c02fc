import { fail, ok, type Result } from '../shared/model/result'

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
    return fail(
      'webdav/insecure',
      'This page is secure (https) and the folder is not (http), so browsers refuse to mix them: give the folder an https address.',
    )
  }
  if (url.origin !== own.origin && !mayConnect(policy, url.origin)) {
    return fail(
      'webdav/policy',
      `This copy of the app may only talk to ${own.origin}: put the folder on the same host, or build the app with MOVEWRIGHT_CONNECT=${url.origin}.`,
    )
  }
  if (!url.pathname.endsWith('/')) url.pathname += '/'
  return ok(url.href)
}

function wrongAddress(text: string) {
  return fail(
    'webdav/address',
    `"${text}" is no address of a folder: write one such as https://files.example.org/lantern/, without name and password.`,
  )
}

function mayConnect(policy: string, origin: string): boolean {
  const connect = policy.split(';').find((part) => part.trim().startsWith('connect-src '))
  return connect === undefined || connect.trim().split(/\s+/).includes(origin)
}
