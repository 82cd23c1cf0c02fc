import type { Core } from '../core/core'
import { fail, ok } from '../model/result'
import { MEASURE_TROUBLE } from '../words/en/measure-trouble'
import { dispatch } from './dispatch'
import { loadPartJob, type RunParts } from './part-jobs'

export interface HereOptions {
  /** Asked before each part; true ends the job with code 'parts/stopped'. */
  shouldStop?: (() => boolean) | undefined
  /** Awaited before each part; give one that lets the thread do other work, such as a timer. */
  pause?: (() => Promise<void>) | undefined
}

/** Runs parts one after the other on this thread. */
export function partsHere(core: Core, { shouldStop, pause }: HereOptions = {}): RunParts {
  const run = async (
    name: Parameters<RunParts>[0],
    shared: unknown,
    parts: readonly unknown[],
    onProgress?: Parameters<RunParts>[3],
  ) => {
    const job = (await loadPartJob(name)).open(core, shared)
    if (!job.ok) return job
    const hand = {
      run: async (part: number, tell: NonNullable<typeof onProgress>) => {
        await pause?.()
        if (shouldStop?.()) return fail('parts/stopped', MEASURE_TROUBLE.stopped)
        return job.value(parts[part], tell)
      },
    }
    const values = await dispatch(parts.length, [hand], { onProgress })
    return values.ok ? ok(values.value) : values
  }
  return run as RunParts
}
