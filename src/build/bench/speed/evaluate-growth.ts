import { cpus, loadavg } from 'node:os'
import {
  DEMO_BACKGROUND_S,
  DEMO_SEED,
  generateDemoLibrary,
} from '../../../shared/demo/demo-library'
import { evaluateMatchers } from '../../../shared/evaluation/evaluate-library'
import type { Evaluation } from '../../../shared/model/evaluation'
import type { FullLibrary, MatcherWish } from '../../../shared/model/library'
import type { RunParts } from '../../../shared/parts/part-jobs'
import { prepareInParts } from '../../../shared/training/prepare-in-parts'
import { partsOnThreads } from '../../parts-on-threads'
import type { Figure } from '../figure'

const TESTERS = 10
/** Takes of each tester and gesture: 480, 960, 2,000 and 4,000 in all. */
const TAKES_EACH = [6, 12, 25, 50]
const AT = 25
const MATCHERS = ['template', 'kernel'] as const

interface Timed {
  takes: number
  wallS: number
  /** Of all threads together: other work on the machine lengthens it less. */
  cpuS: number
  evaluations: Evaluation[]
}

/**
 * Evaluation with each of ten testers held out, eight gestures, from raw samples to the matrix, on all
 * cores; libraries of the demo's generator, which differ in the number of takes and have the same
 * minutes of background. Growth is the slope of ln(CPU seconds) over ln(takes).
 */
export async function benchEvaluation(): Promise<Figure[]> {
  const threads = partsOnThreads()
  try {
    const library = await libraryOf(AT)
    // Each thread compiles TypeScript first, half a second that a page with its bundled workers has not.
    await threads.ready(['condition', 'evaluate'])
    const both = await timed(threads.run, library, MATCHERS)
    const [template, kernel] = both.evaluations
    const load = loadavg()[0]!.toFixed(1)
    const note = `${both.takes} takes, ${template!.folds.length} testers held out, 8 gestures, templates and kernel features, ${cpus().length} cores, load ${load}, threads started before and nothing run on them yet; right: ${share(template!)} and ${share(kernel!)}`
    const growth = new Map<MatcherWish, Timed[]>(MATCHERS.map((matcher) => [matcher, []]))
    for (const each of TAKES_EACH) {
      const full = await libraryOf(each)
      for (const [matcher, times] of growth) times.push(await timed(threads.run, full, [matcher]))
    }
    return [
      { figure: 'evaluate_2000_takes_s', value: both.wallS, unit: 's', note },
      { figure: 'evaluate_2000_takes_cpu_s', value: both.cpuS, unit: 's', note },
      ...[...growth].map(([matcher, times]): Figure => {
        const listed = times.map(({ takes, cpuS }) => `${takes}: ${cpuS.toFixed(1)} s`).join(', ')
        return {
          figure: `evaluate_growth_exponent_${matcher}`,
          value: slope(times),
          unit: '1',
          note: `CPU time; ${listed}`,
        }
      }),
    ]
  } finally {
    threads.end()
  }
}

function libraryOf(takesPerGesture: number): Promise<FullLibrary> {
  return generateDemoLibrary(DEMO_SEED, undefined, undefined, {
    testers: TESTERS,
    takesPerGesture,
    backgroundS: DEMO_BACKGROUND_S,
  })
}

async function timed(
  run: RunParts,
  full: FullLibrary,
  matchers: readonly MatcherWish[],
): Promise<Timed> {
  const began = performance.now()
  const before = process.cpuUsage()
  const prepared = await prepareInParts(run, full)
  if (!prepared.ok) throw new Error(prepared.message)
  const job = { prepared: prepared.value, holdout: 'tester' as const, matchers }
  const evaluations = await evaluateMatchers(run, job)
  if (!evaluations.ok) throw new Error(evaluations.message)
  const { user, system } = process.cpuUsage(before)
  return {
    takes: prepared.value.takes.length,
    wallS: (performance.now() - began) / 1000,
    cpuS: (user + system) / 1e6,
    evaluations: evaluations.value,
  }
}

function share({ accuracy }: Evaluation): string {
  return `${accuracy.hits} of ${accuracy.n}`
}

/** Least squares over the logarithms. */
function slope(times: readonly Timed[]): number {
  const x = times.map(({ takes }) => Math.log(takes))
  const y = times.map(({ cpuS }) => Math.log(cpuS))
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const [mx, my] = [mean(x), mean(y)]
  const products = x.map((value, i) => (value - mx) * (y[i]! - my))
  return mean(products) / mean(x.map((value) => (value - mx) ** 2))
}
