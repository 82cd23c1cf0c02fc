import { proxy } from 'comlink'
import type { Failure } from '../shared/model/result'
import { dispatch, type Hand } from '../shared/parts/dispatch'
import type { PartJobName, RunParts } from '../shared/parts/part-jobs'
import { NOT_OPEN, type OnProgress } from '../shared/protocol/recogniser'
import { CRASHED, type LineOptions, type WorkerLine } from './worker-line'

let jobs = 0

/** A job as one worker has it open. */
interface OpenJob {
  key: number
  name: PartJobName
  shared: unknown
  parts: readonly unknown[]
}

/**
 * Runs parts of jobs on several workers, each to the first that is free. A part whose worker died is
 * done again by another; cancelling ends every worker that runs a part of the job.
 */
export class WorkerPool {
  /** lines: one a worker; none is started before it has something to do. */
  constructor(private readonly lines: readonly WorkerLine[]) {}

  /** Options hold for every call of the runner. */
  runner(options: LineOptions = {}): RunParts {
    const run = async (
      name: PartJobName,
      shared: unknown,
      parts: readonly unknown[],
      onProgress?: OnProgress,
    ) => {
      const job: OpenJob = { key: ++jobs, name, shared, parts }
      const lines = this.lines.slice(0, Math.max(1, parts.length))
      const hands = lines.map((line) => new WorkerHand(line, job, options))
      const answer = await dispatch(parts.length, hands, { onProgress, isOfHand: isWorkers })
      for (const hand of hands) hand.close()
      return answer
    }
    return run as RunParts
  }
}

function isWorkers({ code }: Failure): boolean {
  return code === CRASHED.code || code === NOT_OPEN
}

class WorkerHand implements Hand {
  private opened = false

  constructor(
    private readonly line: WorkerLine,
    private readonly job: OpenJob,
    private readonly options: LineOptions,
  ) {}

  async run(part: number, onProgress: OnProgress) {
    const { key, parts } = this.job
    const once = () =>
      this.line.call(
        (service, whileOpen) => service.runPart(key, parts[part], proxy(whileOpen(onProgress))),
        this.options,
      )
    const first = this.opened ? await once() : null
    // A worker that was started anew, for whatever reason, has nothing open.
    if (first !== null && (first.ok || first.code !== NOT_OPEN)) return first
    const opened = await this.open()
    return opened.ok ? once() : opened
  }

  private async open() {
    const { key, name, shared } = this.job
    const opened = await this.line.call(
      (service) => service.openParts(key, name, shared),
      this.options,
    )
    this.opened = opened.ok
    return opened
  }

  /** Lets the worker forget what it keeps for the job; one that was ended has forgotten it. */
  close(): void {
    if (this.opened) void this.line.callIfRunning((service) => service.closeParts(this.job.key))
  }
}

/** Workers of a pool: as many as cores, but no more, as each holds a copy of what is worked on. */
const MOST_WORKERS = 4

/** @param cores as the platform tells them (`navigator.hardwareConcurrency`), if it does */
export function poolSize(cores: number | undefined): number {
  return Math.max(1, Math.min(MOST_WORKERS, cores ?? 1))
}
