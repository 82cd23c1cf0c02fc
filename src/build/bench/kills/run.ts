import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Random } from '../../../shared/statistics/random'
import { BareChromium, type PageSession } from '../../bare-chromium'
import { Ledger, type Losses } from './ledger'
import {
  addSessionLosses,
  NO_SESSION_LOSSES,
  SessionLedger,
  type SessionLosses,
} from './session-ledger'
import { type AnyJob, type Found, type FoundSession, JOBS, type Word } from './words'

/** A profile is left after so many kills: what it holds is read whole at every start. */
const KILLS_A_PROFILE = 16
/** Longest time before a kill, ms. Recording needs longer than the journal's second. */
const LATEST_MS: Record<AnyJob, number> = {
  recording: 2600,
  labelling: 250,
  merging: 250,
  migrating: 120,
  session: 2600,
  careless: 2600,
  'careless-session': 600,
}
/** Fewer processes to start, hundreds of times. Storage is the browser's own either way. */
const LIGHT = [
  '--in-process-gpu',
  '--disable-extensions',
  '--enable-features=NetworkServiceInProcess2',
]
const GIVE_UP_MS = 60_000

export interface KillRun {
  kills: number
  lost: Losses
  /** Kills while a recording was under way. */
  underWay: number
  /** Takes promised, over all profiles. */
  promised: number
  /** Testers' sessions, over all profiles, and the kills while one was led. */
  sessions: { count: number; kills: number; lost: SessionLosses }
}

export interface KillOptions {
  browserPath: string
  pageUrl: string
  kills: number
  random: Random
  jobs?: readonly AnyJob[]
  /** Called after each kill. */
  onKill?: (run: KillRun) => void
}

/** Kills the browser again and again at random moments of its work, and counts what is lost. */
export async function runKills(options: KillOptions): Promise<KillRun> {
  const { kills, onKill } = options
  const run: KillRun = {
    kills: 0,
    lost: { takes: 0, labels: 0, halves: 0, seconds: null },
    underWay: 0,
    promised: 0,
    sessions: { count: 0, kills: 0, lost: NO_SESSION_LOSSES },
  }
  while (run.kills < kills) {
    const folder = mkdtempSync(join(tmpdir(), 'movewright-kills-'))
    try {
      const ledgers = { takes: new Ledger(), sessions: new SessionLedger() }
      const last = Math.min(kills, run.kills + KILLS_A_PROFILE)
      for (; run.kills < last; onKill?.(run)) {
        await oneStart(options, folder, ledgers, run, 'kill')
        run.kills += 1
      }
      await oneStart(options, folder, ledgers, run, 'look')
      run.promised += ledgers.takes.takes
      run.sessions.count += ledgers.sessions.sessions
    } finally {
      rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 })
    }
  }
  return run
}

interface Ledgers {
  takes: Ledger
  sessions: SessionLedger
}

async function oneStart(
  options: KillOptions,
  folder: string,
  ledgers: Ledgers,
  run: KillRun,
  end: 'kill' | 'look',
): Promise<void> {
  const { browserPath, pageUrl, random, jobs = JOBS } = options
  const browser = new BareChromium(browserPath, folder, LIGHT)
  try {
    const waiting = new Map<Word['is'], () => void>()
    browser.onEvent = (method, params) => {
      if (method !== 'Runtime.bindingCalled') return
      const word = JSON.parse((params as { payload: string }).payload) as Word
      ledgers.takes.hear(word)
      ledgers.sessions.hear(word)
      waiting.get(word.is)?.()
    }
    const heard = (is: Word['is']) => within(new Promise<void>((done) => waiting.set(is, done)), is)
    const session = await browser.firstTab()
    await session.send('Runtime.enable')
    await session.send('Runtime.addBinding', { name: 'tell' })
    const ready = heard('ready')
    await session.send('Page.navigate', { url: pageUrl })
    await ready
    addLosses(run, ledgers.takes.check(await asked<Found>(session, 'kills.look()')))
    await asked(session, 'kills.keep()')
    const sessions = await asked<FoundSession[]>(session, 'kills.sessions()')
    run.sessions.lost = addSessionLosses(run.sessions.lost, ledgers.sessions.check(sessions))
    if (end === 'look') return
    const job = jobs[random.integer(jobs.length)]!
    const working = heard('working')
    const expression = `kills.start(${JSON.stringify(job)}, ${random.nextUint32()})`
    await session.send('Runtime.evaluate', { expression })
    await working
    if (job === 'session') run.sessions.kills += 1
    await new Promise((resolve) => setTimeout(resolve, random.uniform(0, LATEST_MS[job])))
  } finally {
    await browser.kill()
  }
}

function addLosses(run: KillRun, { takes, labels, halves, seconds }: Losses): void {
  const { lost } = run
  lost.takes += takes
  lost.labels += labels
  lost.halves += halves
  if (seconds === null) return
  run.underWay += 1
  lost.seconds = Math.max(lost.seconds ?? 0, seconds)
}

/** What the page answers. @throws Error when the page does */
async function asked<T>(session: PageSession, expression: string): Promise<T> {
  const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
    expression,
    awaitPromise: true,
    returnByValue: true,
  })
  if (exceptionDetails === undefined) return result.value as T
  throw new Error(`${expression}: ${exceptionDetails.exception?.description}`)
}

async function within(promise: Promise<void>, what: string): Promise<void> {
  let timer: ReturnType<typeof setTimeout> | undefined
  const late = new Promise<never>((_, reject) => {
    const message = `The page under kills did not say "${what}" within ${GIVE_UP_MS} ms.`
    timer = setTimeout(() => reject(new Error(message)), GIVE_UP_MS)
  })
  await Promise.race([promise, late]).finally(() => clearTimeout(timer))
}
