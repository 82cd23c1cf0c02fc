import type { Recording, RecordingWithSamples } from '../shared/model/library'
import { type Failure, fail, type Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import { STORAGE_TROUBLE } from '../shared/words/en/storage-trouble'
import { compact, durationMs, joinBlocks } from './chunk'
import type { Connection } from './connection'
import { requireLibrary, requireRecording } from './required'
import { restoreChunk, restoreRecording } from './restore'
import { chunksOf, type ReadTransaction, type WriteTransaction } from './schema'
import { read, startAll, write } from './transaction'
import type { Unreadable } from './unreadable'

/** Facts of a library's recordings that are not deleted, newest first. */
export async function listRecordings(
  connection: Connection,
  unreadable: Unreadable,
  libraryId: string,
): Promise<Recording[]> {
  return read(connection, ['recordings'], (tx) => storedFacts(tx, unreadable, libraryId))
}

/** The same within a transaction. */
export async function storedFacts(
  tx: ReadTransaction | WriteTransaction,
  unreadable: Unreadable,
  libraryId: string,
): Promise<Recording[]> {
  const stored = await tx.objectStore('recordings').index('library').getAll(libraryId)
  return unreadable
    .sift(stored, 'recording', restoreRecording)
    .filter(({ deletedAt }) => deletedAt === null)
    .sort((a, b) => b.recordedAt.localeCompare(a.recordedAt) || b.id.localeCompare(a.id))
}

/** Samples of one recording within a transaction; null when a chunk is missing or damaged. */
export async function samplesWithin(
  tx: ReadTransaction | WriteTransaction,
  recordingId: string,
): Promise<SampleBlock | null> {
  const chunks = (await tx.objectStore('chunks').getAll(chunksOf(recordingId))).map(restoreChunk)
  const whole = chunks.filter((chunk, position) => chunk?.index === position)
  if (whole.length !== chunks.length) return null
  const joined = joinBlocks(whole as SampleBlock[])
  return restoreChunk(joined)
}

export async function loadSamples(
  connection: Connection,
  unreadable: Unreadable,
  recordingId: string,
): Promise<SampleBlock | null> {
  return read(connection, ['recordings', 'chunks'], async (tx) => {
    const [key, samples] = await Promise.all([
      tx.objectStore('recordings').getKey(recordingId),
      samplesWithin(tx, recordingId),
    ])
    return key === undefined ? null : unreadable.note(samples, 'samples', recordingId)
  })
}

/** All readable recordings of a library with their samples, newest first. */
export async function loadRecordings(
  tx: ReadTransaction,
  unreadable: Unreadable,
  libraryId: string,
): Promise<RecordingWithSamples[]> {
  const facts = await storedFacts(tx, unreadable, libraryId)
  const blocks = await Promise.all(facts.map(({ id }) => samplesWithin(tx, id)))
  return facts.flatMap((recording, i) => {
    const samples = unreadable.note(blocks[i] ?? null, 'samples', recording.id)
    return samples === null ? [] : [{ recording, samples }]
  })
}

/** Changes facts only. What describes the samples stays as it was stored. */
export function updateRecording(
  connection: Connection,
  recording: Recording,
): Promise<Result<null>> {
  return write(connection, ['recordings'], async (tx) => {
    const stored = await requireRecording(tx, recording.id)
    const { libraryId, gaps } = stored
    const facts = { ...recording, libraryId, gaps, ...ofSamples(stored) }
    await tx.objectStore('recordings').put(facts)
    return null
  })
}

/** What is known by the samples, and whether it is deleted: no edit changes it, nor forgets it. */
export function ofSamples({ sampleCount, durationMs, deletedAt, contentId }: Recording) {
  const content = contentId === undefined ? {} : { contentId }
  return { sampleCount, durationMs, deletedAt, ...content }
}

/** Marks recordings as deleted at a time, or, with null, as not deleted; all or none. */
export function markRecordings(
  connection: Connection,
  ids: readonly string[],
  deletedAt: string | null,
): Promise<Result<null>> {
  return write(connection, ['recordings'], async (tx) => {
    const stored = await Promise.all(ids.map((id) => requireRecording(tx, id)))
    const store = tx.objectStore('recordings')
    await Promise.all(stored.map((recording) => store.put({ ...recording, deletedAt })))
    return null
  })
}

export async function addRecordings(
  connection: Connection,
  items: readonly RecordingWithSamples[],
): Promise<Result<null>> {
  const damage = findDamage(items)
  if (damage !== null) return damage
  return write(connection, ['libraries', 'recordings', 'chunks'], async (tx) => {
    const libraryIds = [...new Set(items.map(({ recording }) => recording.libraryId))]
    await Promise.all(libraryIds.map((id) => requireLibrary(tx, id)))
    await addWithSamples(tx, items)
    return null
  })
}

/** The first thing wrong with recordings about to be stored, or null. */
export function findDamage(items: readonly RecordingWithSamples[]): Failure | null {
  const damaged = items.find(
    ({ recording, samples }) =>
      restoreRecording(recording) === null || restoreChunk(samples) === null,
  )
  if (damaged === undefined) return null
  return fail('storage/invalid', STORAGE_TROUBLE.damagedRecording(damaged.recording.id))
}

/** Adds new recordings with their samples. Counts are taken from the samples. */
export async function addWithSamples(
  tx: WriteTransaction,
  items: readonly RecordingWithSamples[],
): Promise<void> {
  const recordings = tx.objectStore('recordings')
  const chunks = tx.objectStore('chunks')
  await startAll(
    items.flatMap(({ recording, samples }) => [
      () => recordings.add(withCounts(recording, samples)),
      () => chunks.add({ ...compact(samples), recordingId: recording.id, index: 0 }),
    ]),
  )
}

export function withCounts<R extends Recording>(recording: R, samples: SampleBlock): R {
  return { ...recording, sampleCount: samples.tMs.length, durationMs: durationMs(samples) }
}
