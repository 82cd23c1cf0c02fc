import type { Core } from '../../src/shared/core/core'
import { fail, ok } from '../../src/shared/model/result'
import { loadPartJob } from '../../src/shared/parts/part-jobs'
import type { RunPart } from '../../src/shared/parts/parts'
import { NOT_OPEN, type RecogniserService } from '../../src/shared/protocol/recogniser'
import { WORKER_TROUBLE } from '../../src/shared/words/en/worker-trouble'
import { answer } from './answer'

/** Parts of long jobs, several workers to a job. Each open job has a core of its own. */
export function createPartsService(
  loadCore: () => Promise<Core>,
): Pick<RecogniserService, 'openParts' | 'runPart' | 'closeParts'> {
  const open = new Map<number, RunPart<unknown, unknown>>()
  return {
    openParts: (key, name, shared) =>
      answer(async () => {
        const job = (await loadPartJob(name)).open(await loadCore(), shared)
        if (job.ok) open.set(key, job.value)
        return job.ok ? ok(null) : job
      }),

    runPart: (key, part, onProgress) =>
      answer(async () => {
        const run = open.get(key)
        if (run === undefined) return fail(NOT_OPEN, WORKER_TROUBLE.jobNotOpen)
        return run(part, onProgress)
      }),

    closeParts: async (key) => {
      open.delete(key)
      return ok(null)
    },
  }
}
