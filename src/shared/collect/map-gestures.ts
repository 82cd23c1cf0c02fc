import type { Recording } from '../model/library'
import type { Collection } from './collection'
import { historyOf, recordedChange, withHistory } from './history'
import type { LabelChange } from './labels'

/** The same with other ids of gestures, in labels and in their history. */
export function mapGestures(collection: Collection, gestureId: (id: string) => string): Collection {
  const recordings = collection.recordings.map((one) => mapRecording(one, gestureId))
  return { ...collection, recordings }
}

/** One recording under another gesture's id, in its history too. */
export function mapRecording<R extends Recording>(
  recording: R,
  gestureId: (id: string) => string,
): R {
  if (recording.kind === 'background') return recording
  const before = historyOf(recording)
  const after = before.map((one) => mapChange(one, gestureId))
  // What was replaced may be a value as recorded, whose id follows from the value.
  const ids = new Map(before.map((one, i) => [one.id, after[i]!.id]))
  const moved = after.map((one) => ({ ...one, over: one.over.map((id) => ids.get(id) ?? id) }))
  return withHistory({ ...recording, gestureId: gestureId(recording.gestureId) }, moved)
}

function mapChange(change: LabelChange, gestureId: (id: string) => string): LabelChange {
  if (change.field !== 'gestureId' || change.value === null) return change
  const value = gestureId(change.value)
  const isAsRecorded = change.over.length === 0
  return isAsRecorded ? recordedChange('gestureId', value, change.at) : { ...change, value }
}
