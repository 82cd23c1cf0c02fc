import type { Library, RecordingWithSamples } from '../model/library'
import type { SampleBlock } from '../model/sample'
import { type Collection, type Identified, mergeCollections, withdrawalKey } from './collection'
import { headsOf, historyOf, labelsOf, same, withLabels } from './history'
import { LABEL_FIELDS, type LabelChange, type LabelField } from './labels'
import { testerNames } from './tester-names'

/** A label that copies of one recording do not agree on. */
export interface Conflict {
  contentId: string
  field: LabelField
  /** One for each value, the one that counts here first. */
  choices: LabelChange[]
}

/** What a merge would do; nothing of it is done yet. */
export interface Merge {
  merged: Collection
  /** Content ids of recordings that are not here yet, in their order. */
  added: string[]
  /** Recordings of the files that are here already. */
  knownCount: number
  /** Own recordings whose labels were changed later elsewhere, as they will be. */
  relabelled: Identified[]
  conflicts: Conflict[]
  /** Own recordings that go, since their tester withdrew or they were dropped elsewhere. */
  leaving: Identified[]
  /** Recordings of the files that stay out, since they were withdrawn or dropped. */
  keptOut: { withdrawn: number; dropped: number }
  /** Testers who share a code with another, and what they go by. */
  renamed: { code: string; shownAs: string }[]
}

/** What is stored when a merge is agreed to, all or nothing. */
export interface MergeChange {
  library: Library
  add: RecordingWithSamples[]
  update: Identified[]
  /** Ids of recordings that go. */
  remove: string[]
}

/** What a library holds, for `planMerge`; `recordings` must all be known by content. */
export function collectionOf(library: Library, recordings: readonly Identified[]): Collection {
  const sessions = library.sessions ?? []
  return {
    sessions,
    withdrawals: library.withdrawals ?? [],
    recordings: underOwnCode(recordings, sessions),
  }
}

/** @param theirs with gestures of this library: `mapGestures` */
export function planMerge(mine: Collection, theirs: readonly Collection[]): Merge {
  const merged = theirs.reduce(mergeCollections, mine)
  const before = new Map(mine.recordings.map((one) => [one.contentId, one]))
  const after = new Set(merged.recordings.map((one) => one.contentId))
  const brought = new Set(theirs.flatMap((one) => one.recordings.map(({ contentId }) => contentId)))
  const names = testerNames(merged.sessions)
  return {
    merged,
    added: merged.recordings.flatMap(({ contentId: id }) => (before.has(id) ? [] : [id])),
    knownCount: [...brought].filter((id) => before.has(id) && after.has(id)).length,
    relabelled: merged.recordings.filter((one) => {
      const own = before.get(one.contentId)
      return own !== undefined && !same(labelsOf(own), labelsOf(one))
    }),
    conflicts: merged.recordings.flatMap((one) => conflictsOf(one, before.get(one.contentId))),
    leaving: mine.recordings.filter(({ contentId }) => !after.has(contentId)),
    keptOut: countKeptOut(merged, theirs, before, after),
    renamed: merged.sessions.flatMap(({ id, testerCode: code }) => {
      const shownAs = names.get(id) ?? code
      return shownAs === code ? [] : [{ code, shownAs }]
    }),
  }
}

/** Labels of a recording that were changed apart. @param own as it is here, where it is */
export function conflictsOf(recording: Identified, own: Identified = recording): Conflict[] {
  const history = historyOf(recording)
  return LABEL_FIELDS.flatMap((field): Conflict[] => {
    const current = labelsOf(own)[field]
    const heads = headsOf(history, field)
    const values = new Map(heads.map((head) => [JSON.stringify(head.value), head]))
    if (values.size < 2) return []
    const choices = [...values.values()].sort(
      (a, b) => Number(same(b.value, current)) - Number(same(a.value, current)),
    )
    return [{ contentId: recording.contentId, field, choices }]
  })
}

/**
 * The change that storing a merge makes.
 * @param decided the value chosen in each conflict, by `conflictKey`
 * @param newId 32 hex digits, another for each call
 */
export function settleMerge(
  { library, own }: { library: Library; own: readonly Identified[] },
  merge: Merge,
  samples: ReadonlyMap<string, SampleBlock>,
  decided: ReadonlyMap<string, LabelChange>,
  at: string,
  newId: () => string,
): MergeChange {
  const { sessions, withdrawals } = merge.merged
  const chosen = new Map<string, LabelChange[]>()
  for (const { contentId, field } of merge.conflicts) {
    const choice = decided.get(conflictKey({ contentId, field }))
    if (choice === undefined) continue
    chosen.set(contentId, [...(chosen.get(contentId) ?? []), choice])
  }
  const settled = merge.merged.recordings.map((recording) =>
    (chosen.get(recording.contentId) ?? []).reduce(
      (one, choice) => decideLabel(one, choice, at, newId),
      recording,
    ),
  )
  const shown = underShownCode(settled, sessions)
  const stored = new Map(own.map((one) => [one.id, one]))
  const added = new Set(merge.added)
  return {
    library: { ...library, sessions, withdrawals },
    add: shown.flatMap((recording) => {
      const block = samples.get(recording.contentId)
      if (!added.has(recording.contentId) || block === undefined) return []
      return [{ recording: { ...recording, id: newId(), libraryId: library.id }, samples: block }]
    }),
    update: shown.filter((one) => {
      return !added.has(one.contentId) && !same(inOrder(one), inOrder(stored.get(one.id)))
    }),
    remove: merge.leaving.map(({ id }) => id),
  }
}

/** Members by name: which came first says nothing. */
function inOrder(recording: Identified | undefined): unknown {
  return Object.entries(recording ?? {}).sort(([a], [b]) => (a < b ? -1 : 1))
}

export function conflictKey({ contentId, field }: Pick<Conflict, 'contentId' | 'field'>): string {
  return `${contentId} ${field}`
}

/** A person's word on a label replaces all that was said before, also when it says the same. */
function decideLabel(
  recording: Identified,
  { field, value }: LabelChange,
  at: string,
  newId: () => string,
): Identified {
  const over = headsOf(historyOf(recording), field).map(({ id }) => id)
  const history = [...historyOf(recording), { id: newId(), field, value, at, over } as LabelChange]
  const labels = { ...labelsOf(recording), [field]: value }
  return { ...withLabels(recording, labels), history }
}

/** Recordings under their session's code, as they mean the same everywhere. */
function underOwnCode(recordings: readonly Identified[], sessions: Collection['sessions']) {
  const names = testerNames(sessions)
  const codes = new Map(sessions.map(({ id, testerCode }) => [id, testerCode]))
  return recordings.map((one) => {
    const code = codes.get(one.sessionId ?? '')
    const isShown = code !== undefined && one.testerCode === names.get(one.sessionId ?? '')
    return isShown ? { ...one, testerCode: code } : one
  })
}

/** The reverse: under the code that tells testers of this library apart. */
function underShownCode(recordings: readonly Identified[], sessions: Collection['sessions']) {
  const names = testerNames(sessions)
  const codes = new Map(sessions.map(({ id, testerCode }) => [id, testerCode]))
  return recordings.map((one) => {
    const isOwn = one.testerCode === codes.get(one.sessionId ?? '')
    return isOwn ? { ...one, testerCode: names.get(one.sessionId ?? '') ?? one.testerCode } : one
  })
}

function countKeptOut(
  { withdrawals }: Collection,
  theirs: readonly Collection[],
  before: ReadonlyMap<string, Identified>,
  after: ReadonlySet<string>,
): Merge['keptOut'] {
  const dropped = new Set(
    withdrawals.filter(({ why }) => why === 'dropped').map((one) => withdrawalKey(one)),
  )
  const out = new Map<string, boolean>()
  for (const { contentId } of theirs.flatMap((one) => one.recordings)) {
    if (before.has(contentId) || after.has(contentId)) continue
    out.set(contentId, dropped.has(`content ${contentId}`))
  }
  const count = [...out.values()].filter(Boolean).length
  return { withdrawn: out.size - count, dropped: count }
}
