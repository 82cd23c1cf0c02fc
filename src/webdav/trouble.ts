import { type Failure, fail } from '../shared/model/result'
import { SESSION_FOLDER } from '../shared/words/en/session-folder'

type Act = 'list' | 'read' | 'write'

const FORBIDDEN: Readonly<Record<Act, string>> = {
  list: SESSION_FOLDER.notReadable,
  read: SESSION_FOLDER.notGiven,
  write: SESSION_FOLDER.notWritable,
}

/** What a server's refusal means and what to do, one sentence. */
export function statusFailure(status: number, act: Act): Failure {
  switch (status) {
    case 401:
      return fail('webdav/password', SESSION_FOLDER.password)
    case 403:
      return fail('webdav/forbidden', FORBIDDEN[act])
    case 404:
    case 409:
      return fail('webdav/missing', act === 'read' ? SESSION_FOLDER.gone : SESSION_FOLDER.missing)
    case 405:
    case 501:
      return fail('webdav/none', SESSION_FOLDER.noWebdav)
    case 423:
      return fail('webdav/locked', SESSION_FOLDER.locked)
    case 507:
      return fail('webdav/full', SESSION_FOLDER.full)
    default:
      return fail('webdav/refused', SESSION_FOLDER.answered(status))
  }
}

/** The request did not come to an answer: browsers do not say why. */
export function unreachable(error: unknown, address: string): Failure {
  const { host } = new URL(address)
  const isLate = error instanceof DOMException && error.name === 'TimeoutError'
  return isLate
    ? fail('webdav/late', SESSION_FOLDER.late(host))
    : fail('webdav/network', SESSION_FOLDER.notReached(host))
}
