import { parentPort, workerData } from 'node:worker_threads'
import { fail } from '../shared/model/result'
import { loadPartJob, type PartJobName } from '../shared/parts/part-jobs'
import type { OnProgress } from '../shared/protocol/recogniser'
import { loadCoreForNode } from './load-core'

/** What a thread is told at its start, and what it is told then: the number and input of a part. */
export interface ThreadJob {
  name: PartJobName
  shared: unknown
}

/** A thread of `partsOnThreads`: opens the job it was started with and runs the parts it is sent. */
const { name, shared } = workerData as ThreadJob
const job = (await loadPartJob(name)).open(await loadCoreForNode(), shared)

parentPort?.on('message', async (part: unknown) => {
  const onProgress: OnProgress = (progress) => parentPort?.postMessage({ progress })
  try {
    parentPort?.postMessage({ answer: job.ok ? await job.value(part, onProgress) : job })
  } catch (error) {
    // Only the core's own refusals are expected, and they say what is wrong.
    const message = error instanceof Error ? error.message : String(error)
    parentPort?.postMessage({ answer: fail('thread/failed', message) })
  }
})
