import type { RecogniserClient } from '../../recogniser/client'
import type { Identified } from '../../shared/collect/collection'
import type { Library, Recording } from '../../shared/model/library'
import { ok, type Result } from '../../shared/model/result'
import type { SampleBlock } from '../../shared/model/sample'
import type { Shelf } from '../shelf'

const AT_A_TIME = 100

/**
 * The open library's recordings with their content ids. Those that have none yet get one, which is
 * stored. A recording whose samples cannot be read is left out.
 */
export async function identify(
  shelf: Shelf,
  recogniser: RecogniserClient,
  library: Library,
): Promise<Result<Identified[]>> {
  const recordings = shelf.recordings.peek()
  const unknown = recordings.filter(({ contentId }) => contentId === undefined)
  const ids = new Map<string, string>()
  for (let at = 0; at < unknown.length; at += AT_A_TIME) {
    const some = unknown.slice(at, at + AT_A_TIME)
    const blocks = await Promise.all(some.map(({ id }) => shelf.store.loadSamples(id)))
    const readable = some.filter((_, i) => blocks[i] !== null)
    const found = await recogniser.contentIds(
      blocks.filter((one): one is SampleBlock => one !== null),
    )
    if (!found.ok) return found
    for (const [i, { id }] of readable.entries()) ids.set(id, found.value[i]!)
  }
  const identified = recordings.flatMap((recording): Identified[] => {
    const contentId = recording.contentId ?? ids.get(recording.id)
    return contentId === undefined ? [] : [{ ...recording, contentId }]
  })
  const update: Recording[] = identified.filter(({ id }) => ids.has(id))
  if (update.length > 0) {
    const nothing = { add: [], remove: [], restore: [] }
    const stored = await shelf.store.changeLibrary({ library, update, ...nothing })
    if (!stored.ok) return stored
    await shelf.reloadRecordings()
  }
  return ok(identified)
}
