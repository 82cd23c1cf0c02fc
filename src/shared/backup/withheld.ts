import { contentId } from '../collect/content-id'
import { withWithdrawals } from '../collect/withdraw'
import type { Library, Recording } from '../model/library'
import type { SampleBlock } from '../model/sample'

/**
 * What was withdrawn or dropped in a library after it was backed up must not come back with the
 * backup: says which recordings that is true for.
 * @param here the library as it is on this phone; undefined when it is not there
 */
export function withheldBy(
  here: Library | undefined,
  theirs: Library,
): (recording: Recording, samples?: SampleBlock) => boolean {
  const keys = new Set((here?.withdrawals ?? []).map(({ kind, key }) => `${kind} ${key}`))
  if (keys.size === 0) return () => false
  const sessions = [...(here?.sessions ?? []), ...(theirs.sessions ?? [])]
  const gone = new Set(
    sessions.filter(({ testerKey }) => keys.has(`tester ${testerKey}`)).map(({ id }) => id),
  )
  return (recording, samples) => {
    const { sessionId } = recording
    if (sessionId !== undefined && (gone.has(sessionId) || keys.has(`session ${sessionId}`))) {
      return true
    }
    const content = samples === undefined ? recording.contentId : contentId(samples)
    return content !== undefined && keys.has(`content ${content}`)
  }
}

/** A library of a backup without sessions that were withdrawn here, and with what remembers it. */
export function withoutWithheld(theirs: Library, here: Library | undefined): Library {
  const withdrawals = here?.withdrawals ?? []
  if (withdrawals.length === 0) return theirs
  const isWithheld = withheldBy(here, theirs)
  const sessions = (theirs.sessions ?? []).filter((one) => !isWithheld(ofSession(one)))
  return { ...withWithdrawals(theirs, withdrawals), sessions }
}

/** The library here with what only the backup has: gestures, plans and sessions. */
export function filledUp(here: Library, theirs: Library): Library {
  const isWithheld = withheldBy(here, theirs)
  const sessions = withMissing(here.sessions ?? [], theirs.sessions ?? []).filter(
    (one) => !isWithheld(ofSession(one)),
  )
  const plans = withMissing(here.plans ?? [], theirs.plans ?? [])
  return {
    ...here,
    gestures: withMissing(here.gestures, theirs.gestures),
    ...(plans.length === 0 ? {} : { plans }),
    ...(sessions.length === 0 ? {} : { sessions }),
  }
}

/** Any recording of a session, as far as it matters here. */
function ofSession({ id }: { id: string }): Recording {
  return { sessionId: id } as Recording
}

function withMissing<T extends { id: string }>(mine: readonly T[], theirs: readonly T[]): T[] {
  const known = new Set(mine.map(({ id }) => id))
  return [...mine, ...theirs.filter(({ id }) => !known.has(id))]
}
