import { strToU8 } from 'fflate'
import { sha256Hex } from '../format/sha256'
import type { Recording } from '../model/library'
import { LABEL_FIELDS, type LabelChange, type LabelField, type LabelValues } from './labels'

/** Labels of a recording as they are. */
export function labelsOf(recording: Recording): LabelValues {
  const { testerCode, hand, note } = recording
  return recording.kind === 'take'
    ? { gestureId: recording.gestureId, testerCode, hand, trim: recording.trim, note }
    : { gestureId: null, testerCode, hand, trim: null, note }
}

/** A recording with other labels; whether it is a take or background stays. */
export function withLabels<R extends Recording>(recording: R, labels: LabelValues): R {
  const { gestureId, testerCode, hand, trim, note } = labels
  const shared = { ...recording, testerCode, hand, note }
  if (recording.kind !== 'take') return shared
  return { ...shared, gestureId: gestureId ?? recording.gestureId, trim }
}

/** The value a recording began with. Its id follows from the value, so that copies have the same. */
export function recordedChange<F extends LabelField>(field: F, value: LabelValues[F], at: string) {
  const id = sha256Hex(strToU8(JSON.stringify([field, value]))).slice(0, 32)
  return { id, field, value, at, over: [] } as unknown as LabelChange
}

/** All changes of a recording, with those it began with where nothing was changed. */
export function historyOf(recording: Recording): LabelChange[] {
  const stored = recording.history ?? []
  const labels = labelsOf(recording)
  const untouched = LABEL_FIELDS.filter((field) => !stored.some((one) => one.field === field))
  return inOrder([
    ...stored,
    ...untouched.map((field) => recordedChange(field, labels[field], recording.recordedAt)),
  ])
}

/** Changes that no other replaces; more than one where copies were changed apart. */
export function headsOf(history: readonly LabelChange[], field: LabelField): LabelChange[] {
  const own = history.filter((one) => one.field === field)
  const replaced = new Set(own.flatMap((one) => one.over))
  return own.filter(({ id }) => !replaced.has(id))
}

/** The change that counts: of several, the latest by its own clock, then the greatest id. */
export function winnerOf(history: readonly LabelChange[], field: LabelField): LabelChange | null {
  return headsOf(history, field).reduce<LabelChange | null>((best, one) => {
    return best === null || compare(best, one) < 0 ? one : best
  }, null)
}

/** Labels that a history leads to. */
export function labelsAfter(history: readonly LabelChange[], before: LabelValues): LabelValues {
  const labels = { ...before }
  for (const field of LABEL_FIELDS) {
    const winner = winnerOf(history, field)
    if (winner !== null) Object.assign(labels, { [field]: winner.value })
  }
  return labels
}

/** All changes of both, each once, in an order that depends on the changes alone. */
export function mergeHistories(
  one: readonly LabelChange[],
  other: readonly LabelChange[],
): LabelChange[] {
  const byId = new Map<string, LabelChange>()
  for (const change of [...one, ...other]) {
    const known = byId.get(change.id)
    if (known === undefined || compare(change, known) < 0) byId.set(change.id, change)
  }
  return inOrder([...byId.values()])
}

/**
 * A recording with labels changed by a person, and the change kept in its history.
 * @param newId 32 hex digits, another for each call
 */
export function changeLabels<R extends Recording>(
  recording: R,
  change: Partial<LabelValues>,
  at: string,
  newId: () => string,
): R {
  const before = labelsOf(recording)
  const changed = LABEL_FIELDS.filter(
    (field) => field in change && !same(change[field], before[field]),
  )
  if (changed.length === 0) return recording
  const history = historyOf(recording)
  for (const field of changed) {
    const over = headsOf(history, field).map(({ id }) => id)
    history.push({ id: newId(), field, value: change[field], at, over } as LabelChange)
  }
  return withHistory(withLabels(recording, { ...before, ...change }), history)
}

/** The recording with the part of a history that does not follow from its labels. */
export function withHistory<R extends Recording>(recording: R, all: readonly LabelChange[]): R {
  const { history: _, ...without } = recording
  const isTouched = (field: LabelField) => all.filter((one) => one.field === field).length > 1
  const touched = LABEL_FIELDS.filter(isTouched)
  if (touched.length === 0) return without as R
  const history = inOrder(all.filter(({ field }) => touched.includes(field)))
  return { ...without, history } as unknown as R
}

/** Whether two values of a label say the same. */
export function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other)
}

function inOrder(history: LabelChange[]): LabelChange[] {
  return [...history].sort((a, b) => compareText(a.field, b.field) || compare(a, b))
}

function compare(a: LabelChange, b: LabelChange): number {
  return compareText(a.at, b.at) || compareText(a.id, b.id)
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
