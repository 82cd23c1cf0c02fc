import { type Failure, fail } from '../shared/model/result'

type Act = 'list' | 'read' | 'write'

/** What a server's refusal means and what to do, one sentence. */
export function statusFailure(status: number, act: Act): Failure {
  switch (status) {
    case 401:
      return fail(
        'webdav/password',
        'The folder asks for a name and a password, or does not know these: type them again.',
      )
    case 403:
      return fail(
        'webdav/forbidden',
        act === 'write'
          ? 'The folder does not let this account write: ask its owner for the right to add files.'
          : 'The server does not show this folder: its address is wrong, or the account may not read it.',
      )
    case 404:
    case 409:
      return fail('webdav/missing', 'There is no such folder on the server: check its address.')
    case 405:
    case 501:
      return fail('webdav/none', 'The server knows no WebDAV at this address: check the address.')
    case 423:
      return fail('webdav/locked', 'Somebody has locked the file on the server: try again later.')
    case 507:
      return fail('webdav/full', 'The disk of the server is full: ask its owner to make room.')
    default:
      return fail(
        'webdav/refused',
        `The server answered with ${status}: try again, and ask its owner if it stays so.`,
      )
  }
}

/** The request did not come to an answer: browsers do not say why. */
export function unreachable(error: unknown, address: string): Failure {
  const { host } = new URL(address)
  const isLate = error instanceof DOMException && error.name === 'TimeoutError'
  return isLate
    ? fail('webdav/late', `${host} did not answer in time: go nearer to the network and try again.`)
    : fail(
        'webdav/network',
        `${host} could not be reached: there is no network, the address is wrong, or the server does not allow this page (CORS).`,
      )
}
