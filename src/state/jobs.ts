import { computed, type ReadonlySignal, signal } from '@preact/signals'
import { fail, type Result } from '../shared/model/result'
import type { OnProgress, Progress } from '../shared/protocol/recogniser'
import type { Job } from './app'

type Entry<T> = { basis: string; variant: string } & (
  | { state: 'running'; progress: Progress; cancel: () => void; result: Promise<Result<T>> }
  | { state: 'failed'; message: string }
  | { state: 'done'; value: T }
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
  work: (variant: string, signal: AbortSignal, onProgress: OnProgress) => Promise<Result<T>>
}

/** A long job whose last result is kept in memory for each owner and marked stale when its basis moves. */
export function createJobSlot<T>({ owner, basis, work }: JobSlotOptions<T>): JobSlot<T> {
  const entries = signal<ReadonlyMap<string, Entry<T>>>(new Map())
  const set = (id: string, entry: Entry<T> | undefined) => {
    const next = new Map(entries.value)
    if (entry === undefined) next.delete(id)
    else next.set(id, entry)
    entries.value = next
  }

  const job = computed<Job<T>>(() => {
    const id = owner()
    const entry = id === null ? undefined : entries.value.get(id)
    return entry === undefined ? { state: 'none' } : toJob(entry, basis())
  })

  const begin = (id: string, variant: string): Promise<Result<T>> => {
    const before = entries.peek().get(id)
    const key = { basis: basis(), variant }
    const abort = new AbortController()
    const cancel = () => abort.abort()
    let progress: Progress = { done: 0, total: 1, what: 'Starting' }
    const publish = () => set(id, { ...key, state: 'running', progress, cancel, result })
    const settle = (outcome: Result<T>): Result<T> => {
      const now = entries.peek().get(id)
      if (now?.state !== 'running' || now.result !== result) return outcome
      if (outcome.ok) set(id, { ...key, state: 'done', value: outcome.value })
      else if (abort.signal.aborted) set(id, before?.state === 'done' ? before : undefined)
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
      .then(settle)
    publish()
    return result
  }

  const run = async (variant = ''): Promise<Result<T>> => {
    const id = owner()
    if (id === null) return fail('job/no-library', 'There is no library open; open or create one.')
    const entry = entries.peek().get(id)
    if (entry !== undefined && entry.basis === basis() && entry.variant === variant) {
      if (entry.state === 'done') return { ok: true, value: entry.value }
      if (entry.state === 'running') return entry.result
    }
    if (entry?.state === 'running') entry.cancel()
    return begin(id, variant)
  }

  return { job, run }
}

function toJob<T>(entry: Entry<T>, basis: string): Job<T> {
  if (entry.state === 'running') {
    return { state: 'running', progress: entry.progress, cancel: entry.cancel }
  }
  if (entry.state === 'failed') return { state: 'failed', message: entry.message }
  return { state: 'done', value: entry.value, stale: entry.basis !== basis }
}
