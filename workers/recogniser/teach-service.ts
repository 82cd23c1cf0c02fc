import type { Core } from '../../src/shared/core/core'
import { fail, ok, type Result } from '../../src/shared/model/result'
import type { RecogniserService } from '../../src/shared/protocol/recogniser'
import type { TeachRun } from '../../src/shared/teach/teach-run'
import { WORKER_TROUBLE } from '../../src/shared/words/en/worker-trouble'
import { answer } from './answer'

type WithCore = <T>(work: (core: Core) => Promise<Result<T>> | Result<T>) => Promise<Result<T>>

const NOT_OPEN = fail('live/not-open', WORKER_TROUBLE.teachNotRunning)

/** Teaching over live samples; its code is loaded with the first start. */
export function createTeachService(
  withCore: WithCore,
): Pick<RecogniserService, 'openTeach' | 'beginTeach' | 'pushTeach'> {
  let run: TeachRun | null = null
  return {
    openTeach: (model, target, accelSign) =>
      withCore(async (core) => {
        const { TeachRun } = await import('../../src/shared/teach/teach-run')
        run = new TeachRun(core, model, target, accelSign)
        return ok(null)
      }),

    beginTeach: (gesture) =>
      answer(async () => {
        if (run === null) return NOT_OPEN
        run.begin(gesture)
        return ok(null)
      }),

    pushTeach: async (samples) => (run === null ? NOT_OPEN : ok(run.push(samples))),
  }
}
