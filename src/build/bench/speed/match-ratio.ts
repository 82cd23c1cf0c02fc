import { once } from 'node:events'
import { availableParallelism, loadavg } from 'node:os'
import type { Worker } from 'node:worker_threads'
import DynamicTimeWarping from 'dynamic-time-warping'
import type { Core } from '../../../shared/core/core'
import type { FullLibrary } from '../../../shared/model/library'
import type { RecogniserModel } from '../../../shared/model/recogniser-model'
import { cutTake } from '../../../shared/training/cut-take'
import { prepareLibrary } from '../../../shared/training/prepare'
import { startThread } from '../../start-thread'
import type { Figure } from '../figure'
import type { MatchOrder } from './match-worker'

/** Segments on either side: 10,000 pairs. */
const SEGMENTS = 100
const CHANNELS = 6
const LEAST_MS = 250
const ROUNDS = 8

/**
 * The package dynamic-time-warping against the core on the same pairs with the same answers: normalised
 * segments of the demo, six channels, the sum of absolute differences, the whole matrix without a band,
 * as the package has none. It runs on one thread, the core in eight lanes on every core of the machine.
 * Both are timed in turn, so that other work falls on both; each counts with its best round.
 */
export async function benchMatching(
  core: Core,
  full: FullLibrary,
  model: RecogniserModel,
  bytes: Uint8Array,
): Promise<Figure[]> {
  const { length } = model.normaliser
  const series = segmentsOf(core, full, model, bytes).slice(0, 2 * SEGMENTS)
  const [rows, columns] = [series.slice(0, SEGMENTS), series.slice(SEGMENTS)]
  const options = { channels: CHANNELS, band: length - 1, cost: 0 as const }
  const ours = core.dtwMatrix(rows, columns, options)
  const points = (list: Int8Array[]) => list.map((one) => pointsOf(one))
  const [a, b] = [points(rows), points(columns)]
  const theirs = packageMatrix(a, b)
  const same = theirs.filter((distance, at) => distance === ours[at]).length
  if (same !== ours.length) throw new Error(`Only ${same} of ${ours.length} answers are the same.`)

  const order = { rows, columns, channels: CHANNELS, band: length - 1, leastMs: LEAST_MS }
  const threads = await startThreads(availableParallelism())
  const best = { theirs: Infinity, one: Infinity, all: Infinity }
  for (let round = 0; round < ROUNDS; round++) {
    best.theirs = Math.min(
      best.theirs,
      perPair(() => packageMatrix(a, b), ours.length),
    )
    best.one = Math.min(best.one, 1 / (await pairsPerMs(threads.slice(0, 1), order)))
    best.all = Math.min(best.all, 1 / (await pairsPerMs(threads, order)))
  }
  for (const thread of threads) await thread.terminate()
  const note = `${ours.length} pairs of ${length} points and ${CHANNELS} channels, no band, all answers the same; load ${loadavg()[0]!.toFixed(1)}`
  return [
    {
      figure: 'match_speed_ratio',
      value: best.theirs / best.all,
      unit: '1',
      note: `npm dynamic-time-warping on its one thread, core on ${threads.length} threads; ${note}`,
    },
    {
      figure: 'match_speed_ratio_one_thread',
      value: best.theirs / best.one,
      unit: '1',
      note: `one thread each; ${note}`,
    },
    { figure: 'match_pair_time', value: 1e6 * best.one, unit: 'ns', note: `one thread; ${note}` },
  ]
}

function segmentsOf(
  core: Core,
  full: FullLibrary,
  model: RecogniserModel,
  bytes: Uint8Array,
): Int8Array[] {
  core.load(bytes)
  return prepareLibrary(full).takes.flatMap((take) => {
    const query = cutTake(core, take, model).movement?.query
    return query ? [query] : []
  })
}

/** As the package takes them: an array of points. */
function pointsOf(series: Int8Array): number[][] {
  return Array.from({ length: series.length / CHANNELS }, (_, k) =>
    Array.from(series.subarray(k * CHANNELS, (k + 1) * CHANNELS)),
  )
}

function packageMatrix(rows: number[][][], columns: number[][][]): number[] {
  return rows.flatMap((row) =>
    columns.map((column) => new DynamicTimeWarping(row, column, absolute).getDistance()),
  )
}

function absolute(p: number[], q: number[]): number {
  let sum = 0
  for (let c = 0; c < p.length; c++) sum += Math.abs(p[c]! - q[c]!)
  return sum
}

/** Milliseconds. */
function perPair(work: () => unknown, pairs: number): number {
  const began = performance.now()
  work()
  return (performance.now() - began) / pairs
}

async function startThreads(count: number): Promise<Worker[]> {
  const threads = Array.from({ length: count }, () =>
    startThread(new URL('./match-worker.ts', import.meta.url)),
  )
  await Promise.all(threads.map((thread) => once(thread, 'message')))
  return threads
}

/** Pairs that the threads compare together in a millisecond. */
async function pairsPerMs(threads: readonly Worker[], order: MatchOrder): Promise<number> {
  const times = threads.map(async (thread) => {
    thread.postMessage(order)
    const [msAPair] = (await once(thread, 'message')) as [number]
    return 1 / msAPair
  })
  return (await Promise.all(times)).reduce((sum, rate) => sum + rate, 0)
}
