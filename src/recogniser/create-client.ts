import { proxy } from 'comlink'
import type { Result } from '../shared/model/result'
import type { OnProgress } from '../shared/protocol/recogniser'
import type { ConditionedCache } from '../shared/training/prepare-in-parts'
import type { CallOptions, RecogniserClient } from './client'
import { type Service, WorkerLine } from './worker-line'
import { poolSize, WorkerPool } from './worker-pool'

/** A job's worker without work is ended after this long: its memory is worth more than its start. */
const JOBS_IDLE_MS = 60_000
/** The pool's further workers go sooner: jobs in parts are rare. */
const EXTRA_IDLE_MS = 5_000
/** Conditioned recordings that are kept for the next evaluation: some 8,000 takes. */
const MOST_CONDITIONED_BYTES = 24 * 1024 * 1024
/** Live calls take milliseconds: one that takes this long will not come back. */
const LIVE_TIMEOUT_MS = 10_000

function startWorker(): Worker {
  return new Worker(new URL('../../workers/recogniser/index.ts', import.meta.url), {
    type: 'module',
    name: 'recogniser',
  })
}

/**
 * The recogniser's workers, started when first needed: one for live recognition, one for jobs, which is
 * also the first of the pool, and further ones while a job in parts runs.
 */
export function createRecogniserClient(
  start: () => Worker = startWorker,
  size = poolSize(navigator.hardwareConcurrency),
): RecogniserClient {
  const live = new WorkerLine(start, 0)
  const jobs = new WorkerLine(start, JOBS_IDLE_MS)
  const extraWorkers = Array.from({ length: size - 1 }, () => new WorkerLine(start, EXTRA_IDLE_MS))
  const pool = new WorkerPool([jobs, ...extraWorkers])
  let conditioned: ConditionedCache | undefined

  return {
    train: (full, options = {}) =>
      reported(jobs, options, (service, report) => service.train(full, report)),
    evaluate: async (full, holdout, options = {}) => {
      const { evaluateInParts, ConditionedCache } = await import(
        '../shared/evaluation/evaluate-library'
      )
      conditioned ??= new ConditionedCache(MOST_CONDITIONED_BYTES)
      const run = pool.runner(options)
      return evaluateInParts(run, full, holdout, options.onProgress, { cache: conditioned })
    },
    grip: async (full, options = {}) => {
      const { measureGripInParts } = await import('../shared/grip/measure-grip')
      return measureGripInParts(pool.runner(options), full, options.onProgress)
    },
    parts: (options = {}) => pool.runner(options),
    vectors: (full, trained, options = {}) =>
      jobs.call((service) => service.vectors(full, trained), options),
    replay: (model, target, samples, accelSign, trim, options = {}) =>
      jobs.call((service) => service.replay(model, target, samples, accelSign, trim), options),
    unroll: (model, query, options = {}) =>
      jobs.call((service) => service.unroll(model, query), options),
    decide: (model, target, log, options = {}) =>
      jobs.call((service) => service.decide(model, target, log), options),
    openLive: (model, target, accelSign, options = {}) =>
      live.call((service) => service.openLive(model, target, accelSign), withLimit(options)),
    pushLive: (samples, { buttons = [], ...options } = {}) =>
      live.call((service) => service.pushLive(samples, buttons), withLimit(options)),
    closeLive: (options = {}) => live.call((service) => service.closeLive(), withLimit(options)),
    openTeach: (model, target, accelSign, options = {}) =>
      live.call((service) => service.openTeach(model, target, accelSign), withLimit(options)),
    beginTeach: (gesture, options = {}) =>
      live.call((service) => service.beginTeach(gesture), withLimit(options)),
    pushTeach: (samples, options = {}) =>
      live.call((service) => service.pushTeach(samples), withLimit(options)),
    writeLibrary: (full, options = {}) =>
      reported(jobs, options, (service, report) => service.writeLibrary(full, report)),
    readLibrary: (bytes, options = {}) =>
      reported(jobs, options, (service, report) => service.readLibrary(bytes, report)),
    packLibrary: (full, items, options = {}) =>
      reported(jobs, options, (service, report) => service.packLibrary(full, items, report)),
    readBackup: (file, options = {}) =>
      reported(jobs, options, (service, report) => service.readBackup(file, report)),
    readBackupLibrary: (file, place, options = {}) =>
      reported(jobs, options, (service, report) => service.readBackupLibrary(file, place, report)),
    readIncoming: (name, bytes, options = {}) =>
      jobs.call((service) => service.readIncoming(name, bytes), options),
    contentIds: (blocks, options = {}) =>
      jobs.call((service) => service.contentIds(blocks), options),
    compareTakes: (full, options = {}) =>
      reported(jobs, options, (service, report) => service.compareTakes(full, report)),
    dispose: () => {
      live.dispose()
      jobs.dispose()
      for (const extra of extraWorkers) extra.dispose()
    },
  }
}

/** A call that tells how far it is, until it is answered. */
function reported<T>(
  line: WorkerLine,
  options: CallOptions,
  work: (service: Service, report: OnProgress & object) => Promise<Result<T>>,
): Promise<Result<T>> {
  const { onProgress = () => {} } = options
  return line.call((service, whileOpen) => work(service, proxy(whileOpen(onProgress))), options)
}

function withLimit(options: CallOptions): CallOptions {
  return { timeoutMs: LIVE_TIMEOUT_MS, ...options }
}
