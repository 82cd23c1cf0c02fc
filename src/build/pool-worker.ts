import { parentPort } from 'node:worker_threads'
import { fail, ok, type Result } from '../shared/model/result'
import { loadPartJob, type PartJobName } from '../shared/parts/part-jobs'
import type { RunPart } from '../shared/parts/parts'
import type { OnProgress } from '../shared/protocol/recogniser'
import { loadCoreForNode } from './load-core'

/**
 * What a thread of `partsOnThreads` is told: to have jobs loaded that it may be given, to have one
 * open from now on, or a part of that.
 */
export type Told =
  | { load: readonly PartJobName[] }
  | { open: { name: PartJobName; shared: unknown } }
  | { part: unknown }

let run: Result<RunPart<unknown, unknown>> = fail('thread/idle', 'No job was opened.')

parentPort?.on('message', async (told: Told) => {
  const onProgress: OnProgress = (progress) => parentPort?.postMessage({ progress })
  parentPort?.postMessage({ answer: await answer(told, onProgress) })
})

async function answer(told: Told, onProgress: OnProgress): Promise<Result<unknown>> {
  try {
    if ('part' in told) return run.ok ? run.value(told.part, onProgress) : run
    if ('load' in told) {
      await Promise.all([loadCoreForNode(), ...told.load.map(loadPartJob)])
      return ok(null)
    }
    const { name, shared } = told.open
    run = (await loadPartJob(name)).open(await loadCoreForNode(), shared)
    return run.ok ? ok(null) : run
  } catch (error) {
    // Only the core's own refusals are expected, and they say what is wrong.
    return fail('thread/failed', error instanceof Error ? error.message : String(error))
  }
}
