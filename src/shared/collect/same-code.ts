import type { Collection, Identified } from './collection'
import { changeLabels } from './history'

/**
 * Codes that both sides gave by hand, without a session, and that no common recording shows to be
 * one person's: most likely two people with one code.
 */
export function sharedCodes(mine: Collection, theirs: Collection): string[] {
  const own = codesOf(mine)
  const known = new Set(mine.recordings.map((one) => one.contentId))
  return [...codesOf(theirs)]
    .filter(([code, ids]) => own.has(code) && !ids.some((id) => known.has(id)))
    .map(([code]) => code)
    .sort()
}

/** The recordings of a file with the testers of these codes under codes of their own. */
export function apart(
  theirs: Collection,
  codes: readonly string[],
  taken: readonly string[],
  at: string,
  newId: () => string,
): Collection {
  const used = new Set(taken)
  const renamed = new Map<string, string>()
  for (const code of codes) {
    let next = 2
    while (used.has(`${code}-${next}`)) next++
    used.add(`${code}-${next}`)
    renamed.set(code, `${code}-${next}`)
  }
  const recordings = theirs.recordings.map((one): Identified => {
    const testerCode = one.sessionId === undefined ? renamed.get(one.testerCode) : undefined
    return testerCode === undefined ? one : changeLabels(one, { testerCode }, at, newId)
  })
  return { ...theirs, recordings }
}

/** Content ids of recordings without a session, by tester code. */
function codesOf({ recordings }: Collection): Map<string, string[]> {
  const codes = new Map<string, string[]>()
  for (const { sessionId, testerCode, contentId } of recordings) {
    if (sessionId !== undefined) continue
    codes.set(testerCode, [...(codes.get(testerCode) ?? []), contentId])
  }
  return codes
}
