import type { RecogniserClient } from '../../recogniser/client'
import type { Identified } from '../../shared/collect/collection'
import type { Library, Recording } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import type { SampleBlock } from '../../shared/model/sample'
import { OPEN_LIBRARY } from '../../shared/words/en/open-library'
import type { Shelf } from '../shelf'

const AT_A_TIME = 100
const GONE = fail('collect/gone', OPEN_LIBRARY.gone)

/** A library as stored this moment, with the recordings whose content is known. */
export interface Known {
  library: Library
  own: Identified[]
}

/**
 * A library's recordings with their content ids. Those that have none yet get one, which is stored.
 * A recording whose samples cannot be read is left out.
 *
 * Working out contents takes long, and people go on editing: what is given back is of one moment after
 * the last of it, and only the ids are stored.
 */
export async function identify(
  shelf: Shelf,
  recogniser: RecogniserClient,
  libraryId: string,
): Promise<Result<Known>> {
  const ids = new Map<string, string | null>()
  for (;;) {
    const facts = await shelf.store.loadFacts(libraryId)
    if (facts === null) return GONE
    const { library, recordings } = facts
    const bare = recordings.filter(({ contentId }) => contentId === undefined)
    const unknown = bare.filter(({ id }) => !ids.has(id))
    const unstored = bare.flatMap((one) => identified(one, ids.get(one.id)))
    if (unknown.length > 0) {
      for (let at = 0; at < unknown.length; at += AT_A_TIME) {
        const found = await contentsOf(shelf, recogniser, unknown.slice(at, at + AT_A_TIME))
        if (!found.ok) return found
        for (const [id, contentId] of found.value) ids.set(id, contentId)
      }
    } else if (unstored.length > 0) {
      const contents = new Map(unstored.map(({ id, contentId }) => [id, contentId]))
      const stored = await shelf.store.noteContents(contents)
      if (!stored.ok) return stored
      await shelf.reloadRecordings()
    } else return ok({ library, own: recordings.flatMap((one) => identified(one)) })
  }
}

/** The recording when its content is known; nothing otherwise. */
export function identified(recording: Recording, found: string | null = null): Identified[] {
  const contentId = recording.contentId ?? found
  return contentId === null ? [] : [{ ...recording, contentId }]
}

/** Content ids by recording; null for samples that cannot be read. */
async function contentsOf(
  { store }: Shelf,
  recogniser: RecogniserClient,
  recordings: readonly Recording[],
): Promise<Result<Map<string, string | null>>> {
  const blocks = await Promise.all(recordings.map(({ id }) => store.loadSamples(id)))
  const found = await recogniser.contentIds(
    blocks.filter((one): one is SampleBlock => one !== null),
  )
  if (!found.ok) return found
  const next = found.value.values()
  return ok(
    new Map(
      recordings.map(({ id }, i) => [id, blocks[i] === null ? null : (next.next().value ?? null)]),
    ),
  )
}
