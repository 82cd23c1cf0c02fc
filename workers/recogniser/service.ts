import { decide } from '../../src/shared/board/decision/decide'
import type { Core } from '../../src/shared/core/core'
import { makeVectors } from '../../src/shared/firmware/make-vectors'
import { fail, ok, type Result } from '../../src/shared/model/result'
import type { RecogniserService } from '../../src/shared/protocol/recogniser'
import { replayRecording } from '../../src/shared/replay/replay-recording'
import { unrollSegment } from '../../src/shared/replay/unroll'
import { trainModel } from '../../src/shared/training/train-model'
import { WORKER_TROUBLE } from '../../src/shared/words/en/worker-trouble'
import { answer } from './answer'
import { createFileService } from './file-service'
import { LiveRun } from './live-run'
import { createPartsService } from './parts-service'
import { createTeachService } from './teach-service'

/**
 * The service of the recogniser's worker over a way to get cores. Every method answers with a
 * Result; what is thrown besides the core's own refusals is a bug and rejects the call.
 */
export function createService(loadCore: () => Promise<Core>): RecogniserService {
  let live: LiveRun | null = null

  const withCore = <T>(work: (core: Core) => Promise<Result<T>> | Result<T>) =>
    answer(async () => work(await loadCore()))

  return {
    train: (full, onProgress) => withCore((core) => trainModel(core, full, { onProgress })),

    vectors: (full, trained) => withCore((core) => ok(makeVectors(core, trained, full))),

    replay: (model, target, samples, accelSign, trim) =>
      withCore((core) => replayRecording(core, model, target, samples, accelSign, trim)),

    unroll: (model, query) => withCore((core) => ok(unrollSegment(core, model, query))),

    decide: (model, target, log) => withCore((core) => decide(core, model, target, log)),

    openLive: (model, target, accelSign) =>
      withCore((core) => {
        live = new LiveRun(core, model, target, accelSign)
        return ok(null)
      }),

    pushLive: async (samples, buttons) =>
      live === null
        ? fail('live/not-open', WORKER_TROUBLE.liveNotRunning)
        : ok(live.push(samples, buttons)),

    closeLive: async () => {
      live = null
      return ok(null)
    },

    ...createTeachService(withCore),
    ...createPartsService(loadCore),
    compareTakes: (full, onProgress) =>
      withCore(async (core) => {
        const { compareTakes } = await import('../../src/shared/collect/compare-takes')
        return compareTakes(core, full, onProgress)
      }),

    ...createFileService(),
  }
}
