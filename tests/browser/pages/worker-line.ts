import { proxy, type Remote } from 'comlink'
import { type WhileOpen, WorkerLine } from '../../../src/recogniser/worker-line'
import type { Result } from '../../../src/shared/model/result'
import type { TrialService } from './trial-worker'

let started = 0

const startTrial = () => {
  started += 1
  return new Worker(new URL('./trial-worker.ts', import.meta.url), { type: 'module' })
}

/** The line under test with the trial worker behind it. */
function trialLine(start = startTrial, idleMs = 0, beginWithinMs = 30_000) {
  const line = new WorkerLine(start, idleMs, beginWithinMs)
  const call = (
    work: (service: Remote<TrialService>, whileOpen: WhileOpen) => Promise<unknown>,
    options: { signal?: AbortSignal; timeoutMs?: number } = {},
  ): Promise<Result<unknown>> =>
    line.call(
      (service, whileOpen) => work(service as unknown as Remote<TrialService>, whileOpen) as never,
      options,
    )
  return { line, call }
}

const told = (result: Result<unknown>) => (result.ok ? result.value : result.code)

const trials: Record<string, () => Promise<unknown>> = {
  order: async () => {
    const { call } = trialLine()
    const done: string[] = []
    await Promise.all([
      call((s) => s.slow(80)).then(() => done.push('slow')),
      call((s) => s.echo('a')).then(() => done.push('a')),
      call((s) => s.echo('b')).then(() => done.push('b')),
    ])
    return done
  },
  lateReport: async () => {
    const { call } = trialLine()
    const bare: string[] = []
    const guarded: string[] = []
    await call((s) => s.reportLate(proxy((word: string) => void bare.push(word))))
    const hear = (word: string) => void guarded.push(word)
    await call((s, whileOpen) => s.reportLate(proxy(whileOpen(hear))))
    await call((s) => s.slow(300))
    return { bare, guarded }
  },
  abortRunning: async () => {
    const { call } = trialLine()
    const before = started
    const stop = new AbortController()
    const running = call((s) => s.block(), { signal: stop.signal })
    const behind = call((s) => s.echo('next'))
    setTimeout(() => stop.abort(), 200)
    return { running: told(await running), behind: told(await behind), started: started - before }
  },
  abortQueued: async () => {
    const { call } = trialLine()
    const before = started
    const stop = new AbortController()
    const running = call((s) => s.slow(150))
    const queued = call((s) => s.echo('never'), { signal: stop.signal })
    stop.abort()
    const first = told(await queued)
    const behind = told(await call((s) => s.echo('next')))
    return { first, running: told(await running), behind, started: started - before }
  },
  timeout: async () => {
    const { call } = trialLine()
    const stuck = told(await call((s) => s.block(), { timeoutMs: 300 }))
    return { stuck, after: told(await call((s) => s.echo('next'))) }
  },
  crash: async () => {
    const { call } = trialLine()
    const crashed = call((s) => s.crash())
    const behind = call((s) => s.echo('next'))
    return { crashed: told(await crashed), behind: told(await behind) }
  },
  vanish: async () => {
    const { call } = trialLine()
    await call((s) => s.slow(300))
    const vanished = call((s) => s.vanish())
    const behind = call((s) => s.echo('next'))
    return { vanished: told(await vanished), behind: told(await behind) }
  },
  vanishSilently: async () => {
    const silent = () =>
      new Worker(new URL('./trial-worker.ts', import.meta.url), { type: 'module', name: 'silent' })
    const { call } = trialLine(silent)
    await call((s) => s.slow(300))
    const waited = new Promise((resolve) => setTimeout(resolve, 1500, 'still waiting'))
    return Promise.race([call((s) => s.vanish()).then(told), waited])
  },
  /** The first worker is ended while it is busy with the first call it was ever given. */
  endedInFirstCall: async () => {
    let workers = 0
    const start = () => {
      const worker = startTrial()
      workers += 1
      // As the system does it: the line is not told.
      if (workers === 1) setTimeout(() => Worker.prototype.terminate.call(worker), 1000)
      return worker
    }
    const { call } = trialLine(start)
    const ended = call((s) => s.block()).then(told)
    const behind = call((s) => s.echo('next')).then(told)
    const waited = new Promise((resolve) => setTimeout(resolve, 10_000, 'still waiting'))
    return Promise.race([Promise.all([ended, behind]), waited])
  },
  /** The first worker is ended before it sends anything, the next one is sound. */
  neverBegins: async () => {
    let workers = 0
    const start = () => {
      workers += 1
      if (workers > 1) return startTrial()
      return new Worker(new URL('./trial-worker.ts', import.meta.url), {
        type: 'module',
        name: 'silent',
      })
    }
    const { call } = trialLine(start, 0, 1000)
    const first = call((s) => s.vanish())
    const behind = call((s) => s.slow(1500))
    return { first: told(await first), behind: told(await behind) }
  },
  cannotLoad: async () => {
    const { call } = trialLine(() => new Worker('/no-such-worker.js', { type: 'module' }))
    return [told(await call((s) => s.echo('a'))), told(await call((s) => s.echo('b')))]
  },
  bug: async () => {
    const { call } = trialLine()
    return [told(await call((s) => s.bug())), told(await call((s) => s.echo('next')))]
  },
  idle: async () => {
    const { call } = trialLine(startTrial, 50)
    const before = started
    await call((s) => s.echo('a'))
    await call((s) => s.echo('b'))
    const together = started - before
    await new Promise((resolve) => setTimeout(resolve, 400))
    await call((s) => s.echo('c'))
    return { together, later: started - before }
  },
  dispose: async () => {
    const { line, call } = trialLine()
    const running = call((s) => s.block())
    const queued = call((s) => s.echo('a'))
    line.dispose()
    const late = await call((s) => s.echo('b'))
    return [await running, await queued, late].map(told)
  },
}

declare global {
  interface Window {
    trial?: (name: string) => Promise<unknown>
  }
}

window.trial = (name) => trials[name]!()
