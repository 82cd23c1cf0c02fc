import type { Core } from '../../shared/core/core'
import { decideGestures } from '../../shared/decide/decide-gestures'
import { decideSensor } from '../../shared/decide/decide-sensor'
import { sensorAdvice } from '../../shared/decide/sensor-advice'
import type { FullLibrary } from '../../shared/model/library'
import { wilson } from '../../shared/statistics/wilson'
import { type BenchResult, type Figure, rateFigure } from './figure'
import {
  type Advised,
  type ControlKind,
  controlCase,
  controlKind,
  PLANTED,
  type PlantedKind,
  plantedCase,
} from './planted/cases'

const PLANTED_LIBRARIES = 104
const CONTROLS = 100
/** Seeds that no threshold was set on and no test uses. */
const PLANTED_SEED = 3_000_000
const CONTROL_SEED = 4_000_000

/** Numbers of libraries; fewer for a look. */
export interface AdviceOptions {
  planted?: number
  controls?: number
}

/**
 * How often a decision's advice finds what was planted in a library, and how often it speaks where
 * nothing was: libraries of drawn movements and testers by the demo's physical model.
 */
export async function benchAdvice(
  core: Core,
  { planted = PLANTED_LIBRARIES, controls = CONTROLS }: AdviceOptions = {},
): Promise<BenchResult> {
  const found = new Map<Advised, { hits: number; n: number }>()
  for (let i = 0; i < planted; i++) {
    const kind = PLANTED[i % PLANTED.length]!
    const isFound = await finds(core, kind, plantedCase(kind, PLANTED_SEED + i))
    const { hits, n } = found.get(kind.expected) ?? { hits: 0, n: 0 }
    found.set(kind.expected, { hits: hits + (isFound ? 1 : 0), n: n + 1 })
  }
  let spoken = 0
  for (let i = 0; i < controls; i++) {
    const kind = controlKind(i)
    if (await speaks(core, kind, controlCase(kind, CONTROL_SEED + i))) spoken++
  }
  const all = [...found.values()]
  const sum = (of: 'hits' | 'n') => all.reduce((total, one) => total + one[of], 0)
  const figures: Figure[] = [
    rateFigure(
      'advice_found',
      wilson(sum('hits'), sum('n')),
      `planted libraries, ${PLANTED.length} kinds in turn; generated takes`,
    ),
    rateFigure(
      'advice_false',
      wilson(spoken, controls),
      'libraries where no such advice holds: any on a pair, on the range, or on the gyroscope where its use is known; generated takes',
    ),
    ...[...found].map(([kind, { hits, n }]) =>
      rateFigure(`advice_found_${kind.replaceAll('-', '_')}`, wilson(hits, n), 'planted libraries'),
    ),
  ]
  return { figures, skipped: [] }
}

/** Whether what was planted is said of the pair, or of the sensor, that it was planted in. */
export async function finds(
  core: Core,
  { expected }: PlantedKind,
  full: FullLibrary,
): Promise<boolean> {
  if (expected === 'range-clips' || expected.startsWith('gyro-')) {
    const kinds = await sensorKinds(core, full, expected === 'range-clips' ? [] : ['gyro'])
    return kinds.some((kind) => kind === expected)
  }
  const decision = await decideGestures(core, full)
  if (!decision.ok) return false
  const { gestures, pairs } = decision.value
  const pair = pairs.find(
    ({ first, second }) => gestures[first]?.id === 'a' && gestures[second]?.id === 'b',
  )
  return pair?.advice === expected
}

/** Whether anything is said that must not be. */
export async function speaks(
  core: Core,
  { silent }: ControlKind,
  full: FullLibrary,
): Promise<boolean> {
  if (silent.length > 0) {
    const kinds = await sensorKinds(core, full, ['gyro'])
    return kinds.some((kind) => kind === 'range-clips' || silent.includes(kind))
  }
  const decision = await decideGestures(core, full)
  if (!decision.ok || decision.value.pairs.some(({ advice }) => advice !== null)) return true
  return (await sensorKinds(core, full, [])).length > 0
}

async function sensorKinds(core: Core, full: FullLibrary, axes: ('gyro' | 'range')[]) {
  const decision = await decideSensor(core, full, undefined, { axes })
  return decision.ok ? sensorAdvice(decision.value).map(({ kind }) => kind) : []
}
