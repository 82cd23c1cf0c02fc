import { type Remote, releaseProxy, wrap } from 'comlink'
import { type Failure, fail, type Result } from '../shared/model/result'
import type { RecogniserService } from '../shared/protocol/recogniser'
import { WORKER_TROUBLE } from '../shared/words/en/worker-trouble'
import { BEGIN_WITHIN_MS, watchLife } from './watch-life'

export type Service = Remote<RecogniserService>
/** Of a function that the worker calls: does nothing once the call is answered. */
export type WhileOpen = <A extends unknown[]>(report: (...args: A) => void) => (...args: A) => void
type Work<T> = (service: Service, whileOpen: WhileOpen) => Promise<Result<T>>

export interface LineOptions {
  signal?: AbortSignal | undefined
  timeoutMs?: number | undefined
}

interface Call {
  /** Runs the call; settles when it is answered or given up. */
  run(): Promise<void>
  /** Answers the caller with a failure, once; later answers are ignored. */
  giveUp(failure: Failure): void
}

export const ABORTED = fail('worker/aborted', WORKER_TROUBLE.cancelled)
const TIMED_OUT = fail('worker/timeout', WORKER_TROUBLE.timedOut)
export const CRASHED = fail('worker/crashed', WORKER_TROUBLE.crashed)

/**
 * A worker and the queue before it: one call at a time, in order. Comlink leaves calls open for ever
 * when a worker dies or fails to load, so every end of the worker answers the call that runs; those
 * behind it get a fresh worker.
 */
export class WorkerLine {
  private readonly start: () => Worker
  private readonly idleMs: number
  private readonly beginWithinMs: number
  private worker: Worker | null = null
  private service: Service | null = null
  private unwatch = () => {}
  private readonly queue: Call[] = []
  private current: Call | null = null
  private idleTimer: ReturnType<typeof setTimeout> | undefined
  private disposed = false

  /**
   * idleMs: a worker without calls is ended after this long; 0 keeps it. beginWithinMs: one that has
   * sent nothing by then is given up.
   */
  constructor(start: () => Worker, idleMs: number, beginWithinMs = BEGIN_WITHIN_MS) {
    this.start = start
    this.idleMs = idleMs
    this.beginWithinMs = beginWithinMs
  }

  call<T>(work: Work<T>, { signal, timeoutMs = 0 }: LineOptions = {}): Promise<Result<T>> {
    if (this.disposed || signal?.aborted) return Promise.resolve(ABORTED)
    return new Promise((resolve) => {
      let timer: ReturnType<typeof setTimeout> | undefined
      let answered = false
      const answer = (result: Result<T>) => {
        if (answered) return
        answered = true
        clearTimeout(timer)
        signal?.removeEventListener('abort', onAbort)
        resolve(result)
      }
      // Reports come by a channel of their own, on which a late one may arrive behind the answer.
      const whileOpen: WhileOpen =
        (report) =>
        (...args) => {
          if (!answered) report(...args)
        }
      const call: Call = {
        giveUp: answer,
        run: async () => {
          if (timeoutMs > 0) timer = setTimeout(() => this.end(call, TIMED_OUT), timeoutMs)
          try {
            answer(await work(this.ensureWorker(), whileOpen))
          } catch (error) {
            answer(fail('worker/bug', WORKER_TROUBLE.failed(messageOf(error))))
          }
        },
      }
      const onAbort = () => this.end(call, ABORTED)
      signal?.addEventListener('abort', onAbort)
      this.queue.push(call)
      this.next()
    })
  }

  /** The same, unless there is no worker: then there is nothing to be told. */
  async callIfRunning(work: (service: Service) => Promise<Result<null>>): Promise<void> {
    if (this.service !== null) await this.call(work)
  }

  dispose(): void {
    this.disposed = true
    for (const call of this.queue.splice(0)) call.giveUp(ABORTED)
    this.current?.giveUp(ABORTED)
    this.current = null
    this.stopWorker()
  }

  private next(): void {
    if (this.current !== null) return
    clearTimeout(this.idleTimer)
    const call = this.queue.shift()
    if (call === undefined) {
      if (this.idleMs > 0) this.idleTimer = setTimeout(() => this.stopWorker(), this.idleMs)
      return
    }
    this.current = call
    void call.run().then(() => this.finished(call))
  }

  private finished(call: Call): void {
    // A call that was given up comes here late or never: the line has gone on without it.
    if (this.current !== call) return
    this.current = null
    this.next()
  }

  /** Gives a call up: drops it from the queue, or ends the worker under it. */
  private end(call: Call, failure: Failure): void {
    const at = this.queue.indexOf(call)
    if (at >= 0) this.queue.splice(at, 1)
    call.giveUp(failure)
    if (this.current !== call) return
    this.stopWorker()
    this.finished(call)
  }

  private ensureWorker(): Service {
    if (this.service !== null) return this.service
    const worker = this.start()
    const crashed = () => {
      if (this.worker !== worker) return
      if (this.current === null) this.stopWorker()
      else this.end(this.current, CRASHED)
    }
    worker.addEventListener('error', crashed)
    worker.addEventListener('messageerror', crashed)
    this.unwatch = watchLife(worker, crashed, this.beginWithinMs)
    this.worker = worker
    this.service = wrap<RecogniserService>(worker)
    return this.service
  }

  private stopWorker(): void {
    clearTimeout(this.idleTimer)
    this.service?.[releaseProxy]()
    this.unwatch()
    this.worker?.terminate()
    this.service = null
    this.worker = null
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
