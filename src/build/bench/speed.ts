import type { Core } from '../../shared/core/core'
import { DEMO_SEED, generateDemoLibrary } from '../../shared/demo/demo-library'
import { evaluateLibrary } from '../../shared/evaluation/evaluate-library'
import { AXES } from '../../shared/model/sample'
import { prepareLibrary } from '../../shared/training/prepare'
import { trainModel } from '../../shared/training/train-model'
import type { BenchResult } from './figure'
import { benchMerge } from './merge'
import { benchEvaluation } from './speed/evaluate-growth'
import { benchInBrowser } from './speed/in-browser'
import { benchMatching } from './speed/match-ratio'

const REPEATS = 5

/** How fast this machine runs the core; the least of a few repeats, as other work only slows. */
export async function benchSpeed(core: Core): Promise<BenchResult> {
  const full = await generateDemoLibrary(DEMO_SEED)
  const [trained, trainS] = secondsOf(() => trainModel(core, full))
  if (!trained.ok) throw new Error(trained.message)
  const began = performance.now()
  await evaluateLibrary(core, full, 'tester')
  const evaluateS = (performance.now() - began) / 1000

  const { takes, target } = prepareLibrary(full)
  core.load(trained.value.bytes)
  const streamS = leastSeconds(() => {
    for (const { counts } of takes) core.push(counts)
  })
  const segments = takes.map(({ counts, from, to }) => counts.subarray(from * AXES, to * AXES))
  const decideS = leastSeconds(() => {
    for (const segment of segments) core.classify(segment, null)
  })
  const pushS = leastSeconds(() => {
    for (const { counts } of takes) core.pushAll(counts)
  })
  const samples = takes.reduce((sum, { counts }) => sum + counts.length / AXES, 0)
  const browser = await benchInBrowser(recordMinutes())
  return {
    figures: [
      ...(await benchMatching(core, full, trained.value.model, trained.value.bytes)),
      ...(await benchEvaluation()),
      benchMerge(full),
      ...browser.figures,
      {
        figure: 'push_ns',
        value: (1e9 * pushS) / samples,
        unit: 'ns',
        note: `a sample of ${samples} of the demo, decisions among them`,
      },
      { figure: 'decisions_per_second', value: segments.length / decideS, unit: '1/s' },
      { figure: 'decision_time', value: (1000 * decideS) / segments.length, unit: 'ms' },
      {
        figure: 'stream_to_real_time_ratio',
        value: samples / target.rateHz / streamS,
        unit: 's/s',
        note: 'seconds of demo takes recognised in a second',
      },
      { figure: 'demo_training_time', value: trainS, unit: 's' },
      { figure: 'demo_evaluation_time', value: evaluateS, unit: 's' },
    ],
    skipped: browser.skipped,
  }
}

/** `npm run bench -- speed --record-minutes 10`; one minute by default. */
function recordMinutes(): number {
  const at = process.argv.indexOf('--record-minutes')
  const minutes = at < 0 ? 1 : Number(process.argv[at + 1])
  if (!(minutes > 0)) throw new Error('--record-minutes takes a number of minutes, such as 10.')
  return minutes
}

function secondsOf<T>(work: () => T): [T, number] {
  const began = performance.now()
  const value = work()
  return [value, (performance.now() - began) / 1000]
}

function leastSeconds(work: () => void): number {
  return Math.min(...Array.from({ length: REPEATS }, () => secondsOf(work)[1]))
}
