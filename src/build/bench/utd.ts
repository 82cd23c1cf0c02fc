import type { Core } from '../../shared/core/core'
import type { Target } from '../../shared/model/target'
import { wilson } from '../../shared/statistics/wilson'
import { defaultTarget } from '../../shared/target/default-target'
import type { CutSeries } from '../datasets/cut-series'
import { loadUtdMhadWrist } from '../datasets/utd-mhad'
import { trainCut } from './cut-kernel'
import { namedRightly } from './cut-matcher'
import { type BenchResult, rateFigure } from './figure'

/** The sensor that UTD-MHAD was recorded with: 16-bit readings at 50 Hz. */
export const UTD_TARGET: Target = {
  ...defaultTarget(),
  accel: { fullScale: 8, nanoPerLsb: Math.round((8 * 1e9) / 32768) },
  gyro: { fullScale: 1000, nanoPerLsb: Math.round((1000 * 1e9) / 32768) },
  rateHz: 50,
}

/**
 * Hand strokes: swipe left, swipe right, wave, draw an x, a circle either way, a triangle, knock.
 * Fixed before anything was measured on them alone.
 */
export const STROKES = ['a01', 'a02', 'a03', 'a08', 'a09', 'a10', 'a11', 'a19']
const ALL_AXES = 0b111111
const FEW = [1, 3, 5]

/** One of eight subjects held out in turn; everything is chosen again on the other seven. */
export function utdFigures(core: Core): BenchResult {
  const loaded = loadUtdMhadWrist(UTD_TARGET)
  if (!loaded.ok) return { figures: [], skipped: [loaded.message] }
  const strokes = loaded.value.filter(({ label }) => STROKES.includes(label))
  const all = leaveSubjectsOut(core, loaded.value, Number.POSITIVE_INFINITY)
  const figures = [
    rateFigure(
      'utd_mhad_wrist_louo_accuracy',
      all.rate,
      `21 actions, subjects held out in turn, settings chosen on the others; last: ${all.says}`,
    ),
    ...FEW.map((takes) => {
      const { rate, says } = leaveSubjectsOut(core, strokes, takes)
      const note = `8 hand strokes, new subject, at most ${takes} of each other subject; last: ${says}`
      return rateFigure(`fewshot_${takes}_accuracy`, rate, note)
    }),
    ...FEW.map((takes) => {
      const note = `8 hand strokes, at most ${takes} of one subject, all other subjects named`
      return rateFigure(`onetester_${takes}_accuracy`, fromOneSubject(core, strokes, takes), note)
    }),
  ]
  return { figures, skipped: [] }
}

/** @param most takes of a gesture by one subject that training may use, the first ones */
function leaveSubjectsOut(core: Core, series: readonly CutSeries[], most: number) {
  const subjects = [...new Set(series.map(({ tester }) => tester))].sort()
  let [hits, n, says] = [0, 0, '']
  for (const subject of subjects) {
    const train = firstOfEach(
      series.filter(({ tester }) => tester !== subject),
      most,
    )
    const trained = trainCut(core, UTD_TARGET, train, ALL_AXES, true)
    const rate = namedRightly(
      core,
      trained.model,
      series.filter(({ tester }) => tester === subject),
    )
    hits += rate.hits
    n += rate.n
    says = trained.says
  }
  return { rate: wilson(hits, n), says }
}

/** What takes of one person alone are worth for others; each subject in turn is that person. */
function fromOneSubject(core: Core, series: readonly CutSeries[], most: number) {
  const subjects = [...new Set(series.map(({ tester }) => tester))].sort()
  let [hits, n] = [0, 0]
  for (const subject of subjects) {
    const own = firstOfEach(
      series.filter(({ tester }) => tester === subject),
      most,
    )
    const { model } = trainCut(core, UTD_TARGET, own, ALL_AXES, true)
    const rate = namedRightly(
      core,
      model,
      series.filter(({ tester }) => tester !== subject),
    )
    hits += rate.hits
    n += rate.n
  }
  return wilson(hits, n)
}

function firstOfEach(series: readonly CutSeries[], most: number): CutSeries[] {
  const seen = new Map<string, number>()
  return series.filter(({ label, tester }) => {
    const key = `${label} ${tester}`
    const count = (seen.get(key) ?? 0) + 1
    seen.set(key, count)
    return count <= most
  })
}
