import type { Core } from '../../shared/core/core'
import { generateDemoLibrary } from '../../shared/demo/demo-library'
import { createRandom } from '../../shared/statistics/random'
import { trainModel } from '../../shared/training/train-model'
import type { FuzzSubject } from '../fuzz/round-trip'
import { fuzzSubjects } from '../fuzz/subjects'
import type { BenchResult } from './figure'
import { numberAfter } from './number-after'

const CASES = 100_000
const SEED = 1
/** Bad cases that are shown. */
const SHOWN = 10

interface Tally {
  cases: number
  accepted: number
  crashes: string[]
  wrong: string[]
  slowestMs: number
}

/**
 * Reads altered copies of every kind of file that strangers may hand over. Nothing may be thrown, and
 * what is accepted must say the same when it is written and read again.
 * `npm run bench -- fuzz [--cases N] [--seed N]`; a case can be had again by its seed and number.
 */
export async function benchFuzz(core: Core): Promise<BenchResult> {
  const cases = numberAfter('--cases', CASES, 1)
  const seed = numberAfter('--seed', SEED, 1)
  const trained = trainModel(core, await generateDemoLibrary(SEED))
  if (!trained.ok) throw new Error(trained.message)
  const before = process.memoryUsage().rss
  const tally: Tally = { cases: 0, accepted: 0, crashes: [], wrong: [], slowestMs: 0 }
  const notes: string[] = []
  for (const subject of await fuzzSubjects(core, trained.value.bytes)) {
    const accepted = tally.accepted
    const count = Math.ceil(cases * subject.share)
    await fuzzOne(subject, count, seed, tally)
    notes.push(`${subject.name} ${tally.accepted - accepted} of ${count} accepted`)
  }
  for (const line of [...tally.crashes, ...tally.wrong].slice(0, SHOWN)) {
    process.stderr.write(`${line}\n`)
  }
  const growth = process.memoryUsage().rss - before
  return {
    figures: [
      { figure: 'fuzz_crashes', value: tally.crashes.length, unit: 'cases', n: tally.cases },
      {
        figure: 'fuzz_accepted_wrong',
        value: tally.wrong.length,
        unit: 'cases',
        n: tally.accepted,
        note: notes.join('; '),
      },
      { figure: 'fuzz_slowest_ms', value: Math.round(tally.slowestMs), unit: 'ms' },
      { figure: 'fuzz_memory_growth_bytes', value: growth, unit: 'B' },
    ],
    skipped: [],
  }
}

async function fuzzOne(
  subject: FuzzSubject,
  cases: number,
  seed: number,
  tally: Tally,
): Promise<void> {
  for (let number = 0; number < cases; number++) {
    const input = subject.alter(createRandom(seed * 1_000_003 + number))
    const name = `${subject.name}, seed ${seed}, case ${number}`
    const from = performance.now()
    try {
      const verdict = await subject.judge(input)
      if (verdict !== 'refused') tally.accepted++
      if (typeof verdict === 'object') tally.wrong.push(`${name}: ${verdict.wrong}`)
    } catch (error) {
      tally.crashes.push(`${name}: ${error instanceof Error ? error.message : String(error)}`)
    }
    tally.slowestMs = Math.max(tally.slowestMs, performance.now() - from)
    if (Object.keys(Object.prototype).length > 0) {
      throw new Error(`${name}: something was put on the prototype of all objects`)
    }
    tally.cases++
  }
}
