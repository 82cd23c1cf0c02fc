import { computed, type ReadonlySignal, signal } from '@preact/signals'
import { fail, type Result } from '../shared/model/result'
import type { OnProgress, Progress } from '../shared/protocol/recogniser'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import { PROGRESS } from '../shared/words/en/progress'
import type { Job } from './app'
import type { Kept, ResultKeeper } from './kept-results'
import { thrown } from './thrown'

type Entry<T> = { basis: string; variant: string } & (
  | { state: 'running'; progress: Progress; cancel: () => void; result: Promise<Result<T>> }
  | { state: 'failed'; message: string }
  | { state: 'done'; value: T; at: string; byOther: boolean }
)

export interface JobSlot<T> {
  job: ReadonlySignal<Job<T>>
  /** Runs unless a fresh result is there; joins a run on the same basis, replaces any other. */
  run(variant?: string): Promise<Result<T>>
}

export interface JobSlotOptions<T> {
  /** Whose result it is (a library's id), null when there is none to work on. Reactive. */
  owner: () => string | null
  /** Fingerprint of everything the result depends on. Reactive. */
  basis: () => string
  /** What it throws is a failure like one that it gives back. */
  work: (variant: string, signal: AbortSignal, onProgress: OnProgress) => Promise<Result<T>>
  /** Where the last result outlives the page; read when the job is first looked at. */
  keeper?: ResultKeeper<T>
}

/** A long job whose last result is kept for each owner and marked stale when its basis moves. */
export function createJobSlot<T>({ owner, basis, work, keeper }: JobSlotOptions<T>): JobSlot<T> {
  const entries = signal<ReadonlyMap<string, Entry<T>>>(new Map())
  const set = (id: string, entry: Entry<T> | undefined) => {
    const next = new Map(entries.value)
    if (entry === undefined) next.delete(id)
    else next.set(id, entry)
    entries.value = next
  }

  const recall = createRecall(keeper, (id, kept) => {
    // A newer result may be there by now.
    if (!entries.peek().has(id)) set(id, ofKept(kept))
  })

  const job = computed<Job<T>>(() => {
    const id = owner()
    const entry = id === null ? undefined : entries.value.get(id)
    if (id !== null) void recall(id)
    return entry === undefined ? { state: 'none' } : toJob(entry, basis())
  })

  const begin = (id: string, variant: string): Promise<Result<T>> => {
    const before = entries.peek().get(id)
    const key = { basis: basis(), variant }
    const abort = new AbortController()
    const cancel = () => abort.abort()
    let progress: Progress = { done: 0, total: 1, what: PROGRESS.starting }
    const publish = () => set(id, { ...key, state: 'running', progress, cancel, result })
    const settle = (outcome: Result<T>): Result<T> => {
      const now = entries.peek().get(id)
      if (now?.state !== 'running' || now.result !== result) return outcome
      if (outcome.ok) {
        const at = new Date().toISOString()
        set(id, { ...key, state: 'done', value: outcome.value, at, byOther: false })
        keeper?.write(id, { ...key, keptAt: at, value: outcome.value }).catch(() => undefined)
      } else if (abort.signal.aborted) set(id, before?.state === 'done' ? before : undefined)
      else set(id, { ...key, state: 'failed', message: outcome.message })
      return outcome
    }
    const result: Promise<Result<T>> = Promise.resolve()
      .then(() =>
        work(variant, abort.signal, (steps) => {
          progress = steps
          if (!abort.signal.aborted) publish()
        }),
      )
      .catch(thrown)
      .then(settle)
    publish()
    return result
  }

  const run = async (variant = ''): Promise<Result<T>> => {
    const id = owner()
    if (id === null) return fail('job/no-library', OPEN_LIBRARY.none)
    if (keeper !== undefined) await recall(id)
    if (owner() !== id) return fail('job/other-library', OPEN_LIBRARY.anotherOpened)
    const entry = entries.peek().get(id)
    if (entry !== undefined && entry.basis === basis() && entry.variant === variant) {
      if (entry.state === 'done' && !entry.byOther) return { ok: true, value: entry.value }
      if (entry.state === 'running') return entry.result
    }
    if (entry?.state === 'running') entry.cancel()
    return begin(id, variant)
  }

  return { job, run }
}

/** Shows what was kept, read once for each owner; undefined where nothing is kept. */
function createRecall<T>(
  keeper: ResultKeeper<T> | undefined,
  show: (owner: string, kept: Kept<T>) => void,
): (owner: string) => Promise<void> | undefined {
  const begun = new Map<string, Promise<void>>()
  return (owner) => {
    if (keeper === undefined || begun.has(owner)) return begun.get(owner)
    // What cannot be read is measured again when it is asked for.
    const reading = keeper.read(owner).then(
      (kept) => {
        if (kept !== null) show(owner, kept)
      },
      () => undefined,
    )
    begun.set(owner, reading)
    return reading
  }
}

function ofKept<T>({ basis, variant, keptAt, value, byOther = false }: Kept<T>): Entry<T> {
  return { basis, variant, state: 'done', value, at: keptAt, byOther }
}

function toJob<T>(entry: Entry<T>, basis: string): Job<T> {
  if (entry.state === 'running') {
    return { state: 'running', progress: entry.progress, cancel: entry.cancel }
  }
  if (entry.state === 'failed') return { state: 'failed', message: entry.message }
  const { value, at, byOther } = entry
  const stale = byOther || entry.basis !== basis
  return { state: 'done', value, stale, at, ...(byOther && { byOther }) }
}
