import { recordOf } from '../../shared/collect/session-record'
import type { SessionRun } from '../../shared/collect/session-run'
import type { Recording } from '../../shared/model/library'
import type { Result } from '../../shared/model/result'
import type { Shelf } from '../shelf'

/** Stores the run as it stands. */
export function putRun({ store }: Shelf, run: SessionRun): Promise<Result<null>> {
  const { id, startedAt: keptAt, plan } = run
  return store.putItem('sessions', { id, libraryId: plan.libraryId, keptAt, value: recordOf(run) })
}

/** What is stored of a session. */
export async function recordingsOf(
  { store }: Shelf,
  libraryId: string,
  id: string,
): Promise<Recording[]> {
  return (await store.listRecordings(libraryId)).filter(({ sessionId }) => sessionId === id)
}
