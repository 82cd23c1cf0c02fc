import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'
import { createRandom } from '../../shared/statistics/random'
import { repositoryPath } from '../paths'
import { serveFolder } from '../static-server'
import { findTool, installLine } from '../tools'
import type { BenchResult, Figure } from './figure'
import { type KillOptions, type KillRun, runKills } from './kills/run'
import { JOBS, type JobName } from './kills/words'
import { numberAfter } from './number-after'

const PAGE = 'tests/browser/pages/kills.html'
const SELF_CHECK_KILLS = 3

/**
 * Kills of the browser's process at random moments of recording, labelling, merging, migrating and
 * testers' sessions. `--kills N` (1000), `--seed N` (1) and `--job NAME`, for one kind of work alone,
 * are taken from the command line. The counters are tried first on pages that promise before they
 * write and keep no journal: they must count every one.
 */
export async function benchKills(): Promise<BenchResult> {
  const browserPath = findTool('chromium')
  if (browserPath === null) {
    return { figures: [], skipped: [`kills need chromium: ${installLine(['chromium'])}`] }
  }
  const kills = numberAfter('--kills', 1000)
  const seed = numberAfter('--seed', 1)
  const page = await servePage()
  try {
    const options = { browserPath, pageUrl: page.url, random: createRandom(seed) }
    const careless = await runKills({ ...options, kills: SELF_CHECK_KILLS, jobs: ['careless'] })
    if (careless.lost.takes !== SELF_CHECK_KILLS || !((careless.lost.seconds ?? 0) > 0)) {
      throw new Error(
        `The counter missed a loss: ${careless.lost.takes} of ${SELF_CHECK_KILLS} careless takes.`,
      )
    }
    const jobs = ['careless-session'] as const
    const sessions = await runKills({ ...options, kills: SELF_CHECK_KILLS, jobs })
    if (Math.min(sessions.sessions.lost.takes, sessions.lost.takes) < SELF_CHECK_KILLS) {
      throw new Error('The counter missed takes that careless sessions lost.')
    }
    const run = await runKills({
      ...options,
      kills,
      jobs: jobsAsked(),
      onKill: progressLine(kills),
    })
    const figures = [...figuresOf(run, careless, seed), ...sessionFigures(run, sessions, seed)]
    return { figures, skipped: [] }
  } finally {
    await page.close()
  }
}

function figuresOf(run: KillRun, careless: KillRun, seed: number): Figure[] {
  const { lost, kills, underWay, promised } = run
  const note = `seed ${seed}; ${promised} takes promised, ${underWay} kills during a recording`
  const count = (figure: string, value: number) => ({ figure, value, unit: 'count', note })
  const seconds = (one: KillRun) => Number((one.lost.seconds ?? 0).toFixed(3))
  return [
    count('kills', kills),
    count('finished_takes_lost', lost.takes),
    { figure: 'seconds_lost_max', value: seconds(run), unit: 's', note },
    count('labels_lost', lost.labels),
    count('half_merges', lost.halves),
    {
      figure: 'kills_self_check_takes_counted',
      value: careless.lost.takes,
      unit: 'count',
      note: `of ${careless.kills} that a page promised and never wrote; without a journal ${seconds(careless)} s were lost`,
    },
  ]
}

function sessionFigures({ sessions }: KillRun, careless: KillRun, seed: number): Figure[] {
  const { lost, kills, count } = sessions
  const note = `seed ${seed}; ${count} sessions, ${kills} kills while one was led`
  const counted = (figure: string, value: number) => ({ figure, value, unit: 'count', note })
  return [
    counted('sessions_not_gone_on_with', lost.gone),
    counted('session_takes_lost', lost.takes),
    counted('session_takes_misplaced', lost.misplaced),
    counted('session_takes_doubled', lost.doubled),
    counted('session_progress_wrong', lost.progress),
    {
      figure: 'kills_self_check_session_takes_counted',
      value: careless.sessions.lost.takes,
      unit: 'count',
      note: `of sessions over a store that promised and never wrote, ${careless.kills} kills`,
    },
  ]
}

function jobsAsked(): readonly JobName[] {
  const at = process.argv.indexOf('--job')
  if (at < 0) return JOBS
  const job = JOBS.find((name) => name === process.argv[at + 1])
  if (job === undefined) throw new Error(`--job needs one of ${JOBS.join(', ')}.`)
  return [job]
}

function progressLine(kills: number): NonNullable<KillOptions['onKill']> {
  const everyTenth = Math.max(1, Math.round(kills / 10))
  return ({ kills: done, lost }) => {
    if (done % everyTenth !== 0) return
    const seconds = (lost.seconds ?? 0).toFixed(3)
    process.stderr.write(`${done} of ${kills} kills: ${lost.takes} takes lost, ${seconds} s\n`)
  }
}

/** The page under kills, bundled once: hundreds of starts shall not wait for modules. */
async function servePage(): Promise<{ url: string; close: () => Promise<void> }> {
  const folder = mkdtempSync(join(tmpdir(), 'movewright-kills-page-'))
  await build({
    configFile: false,
    logLevel: 'warn',
    root: repositoryPath('.'),
    base: './',
    publicDir: false,
    build: {
      outDir: folder,
      emptyOutDir: true,
      target: 'es2022',
      modulePreload: false,
      rollupOptions: { input: repositoryPath(PAGE) },
    },
  })
  const server = await serveFolder({ folder, host: '127.0.0.1', port: 0 })
  return {
    url: `http://localhost:${server.port}/${PAGE}`,
    close: async () => {
      await server.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
