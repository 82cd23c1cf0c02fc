import { proxy } from 'comlink'
import type { OnProgress } from '../shared/protocol/recogniser'
import type { CallOptions, RecogniserClient } from './client'
import { WorkerLine } from './worker-line'

/** A job's worker without work is ended after this long: its memory is worth more than its start. */
const JOBS_IDLE_MS = 60_000
/** Live calls take milliseconds: one that takes this long will not come back. */
const LIVE_TIMEOUT_MS = 10_000

function startWorker(): Worker {
  return new Worker(new URL('../../workers/recogniser/index.ts', import.meta.url), {
    type: 'module',
    name: 'recogniser',
  })
}

/** The recogniser's workers: one for live recognition, one for jobs; started when first needed. */
export function createRecogniserClient(start: () => Worker = startWorker): RecogniserClient {
  const live = new WorkerLine(start, 0)
  const jobs = new WorkerLine(start, JOBS_IDLE_MS)

  return {
    train: (full, options = {}) =>
      jobs.call((service) => service.train(full, report(options)), options),
    evaluate: (full, holdout, options = {}) =>
      jobs.call((service) => service.evaluate(full, holdout, report(options)), options),
    grip: (full, options = {}) =>
      jobs.call((service) => service.grip(full, report(options)), options),
    vectors: (full, trained, options = {}) =>
      jobs.call((service) => service.vectors(full, trained), options),
    replay: (model, target, samples, accelSign, options = {}) =>
      jobs.call((service) => service.replay(model, target, samples, accelSign), options),
    unroll: (model, query, options = {}) =>
      jobs.call((service) => service.unroll(model, query), options),
    decide: (model, target, log, options = {}) =>
      jobs.call((service) => service.decide(model, target, log), options),
    openLive: (model, target, accelSign, options = {}) =>
      live.call((service) => service.openLive(model, target, accelSign), withLimit(options)),
    pushLive: (samples, options = {}) =>
      live.call((service) => service.pushLive(samples), withLimit(options)),
    closeLive: (options = {}) => live.call((service) => service.closeLive(), withLimit(options)),
    writeLibrary: (full, options = {}) =>
      jobs.call((service) => service.writeLibrary(full), options),
    readLibrary: (bytes, options = {}) =>
      jobs.call((service) => service.readLibrary(bytes), options),
    dispose: () => {
      live.dispose()
      jobs.dispose()
    },
  }
}

function report({ onProgress }: CallOptions): OnProgress & object {
  return proxy(onProgress ?? (() => {}))
}

function withLimit(options: CallOptions): CallOptions {
  return { timeoutMs: LIVE_TIMEOUT_MS, ...options }
}
