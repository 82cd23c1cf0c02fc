import { readLibraryFile } from '../format/library-file'
import { fail, ok, type Result } from '../model/result'
import { SESSION_FILE } from '../words/en/session-file'
import { type Incoming, incomingLibrary, incomingSession } from './incoming'
import { readSessionFile } from './session-file'

/**
 * Reads whatever people bring home: a session file or a library file.
 * @param name of the file, for people
 * @returns failures of `readSessionFile` and `readLibraryFile`, or 'collect/unknown' for other ZIPs
 */
export function readIncoming(name: string, bytes: Uint8Array): Result<Incoming> {
  const session = readSessionFile(bytes)
  if (session.ok) return ok(incomingSession(name, session.value))
  // Without the document of a session it may be a library.
  if (session.code !== 'session/no-document') {
    return session.code === 'zip/too-large' ? readLibrary(name, bytes, session) : session
  }
  return readLibrary(name, bytes, fail('collect/unknown', SESSION_FILE.unknown))
}

function readLibrary(name: string, bytes: Uint8Array, otherwise: Result<never>): Result<Incoming> {
  const library = readLibraryFile(bytes)
  if (library.ok) return ok(incomingLibrary(name, library.value))
  return library.code === 'library/no-document' ? otherwise : library
}
