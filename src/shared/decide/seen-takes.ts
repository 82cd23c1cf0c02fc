import type { Core } from '../core/core'
import type { ModelSegmenter } from '../model/recogniser-model'
import type { Target } from '../model/target'
import { rmsOf } from '../training/amplitudes'
import { cutTake } from '../training/cut-take'
import {
  cuttingModel,
  cuttingModelBytes,
  defaultNormaliser,
  GYRO_AXES,
} from '../training/cutting-model'
import { apartness, distancesBetween, type Example } from '../training/examples'
import {
  type CutPrepared,
  chooseMatcher,
  isUsable,
  type Matcher,
  noiseFloors,
  readExamples,
  warpOf,
} from '../training/matcher-search'
import type { Prepared } from '../training/prepare'
import { proposeSegmenter } from '../training/segmenter-search'
import type { MotionVector } from './scalars'

/** Distances are a square table: more takes than this would take minutes on a phone. */
export const MOST_TAKES = 400

/** The takes as training cuts and normalises them. */
export interface SeenTakes {
  segmenter: ModelSegmenter
  matcher: Matcher
  cuts: CutPrepared[]
}

/** Cuts and chooses how to compare, as training does. */
export function seeTakes(core: Core, prepared: Prepared): SeenTakes {
  const { segmenter } = proposeSegmenter(core, prepared)
  const options = { segmenter, button: prepared.settings.segmentation === 'button' }
  core.load(cuttingModelBytes(prepared.target, options))
  const model = cuttingModel(prepared.target, options)
  const cuts = prepared.takes.map((take) => ({ take, result: cutTake(core, take, model) }))
  return { segmenter, cuts, matcher: chooseMatcher(core, prepared, segmenter, cuts, false) }
}

/** Acceleration mixes movement with gravity, whose share depends on speed and size: rotation does not. */
const SHAPE_CHANNELS = GYRO_AXES

/** Course of rotation scaled to one size: the path without size, speed and attitude. */
export function shapeMatcher(core: Core, prepared: Prepared, seen: SeenTakes): Matcher {
  const { length } = prepared.settings
  const floor = noiseFloors(core, prepared, seen.segmenter)
  const bounded = floor.map((value) => Math.max(1, Math.min(65535, Math.round(value))))
  return {
    ...seen.matcher,
    normaliser: {
      ...defaultNormaliser(length),
      channelMask: SHAPE_CHANNELS,
      floor: bounded as [number, number],
    },
  }
}

/** Distance of each take to the nearest example of each gesture that it may be measured with. */
export interface NearestOf {
  examples: Example[]
  /** By example, then gesture; Infinity where there is nothing to measure with. */
  nearest: Float64Array[]
}

/** Examples of other testers where there are any, else other takes: as testers held out. */
export function nearestOf(
  core: Core,
  prepared: Prepared,
  seen: SeenTakes,
  matcher: Matcher,
): NearestOf & { table: Float64Array } {
  const examples = readExamples(core, prepared, seen.segmenter, matcher, seen.cuts)
  const table = distancesBetween(core, examples, warpOf(matcher))
  return { examples, table, nearest: nearestIn(table, examples, prepared.gestures.length) }
}

/** @param skip testers whose examples nobody is measured with */
export function nearestIn(
  table: Float64Array,
  examples: readonly Example[],
  gestureCount: number,
  skip?: string,
): Float64Array[] {
  const apart = apartness(examples)
  const n = examples.length
  return examples.map((_, i) => {
    const nearest = new Float64Array(gestureCount).fill(Number.POSITIVE_INFINITY)
    for (const [j, { gesture, tester }] of examples.entries()) {
      if (tester === skip || !apart(i, j)) continue
      const distance = table[i * n + j]!
      if (distance < nearest[gesture]!) nearest[gesture] = distance
    }
    return nearest
  })
}

/** Length and size of what was cut out of each take; null where nothing was. */
export function motionOf({ cuts }: SeenTakes, target: Target): (MotionVector | null)[] {
  const dpsPerCount = target.gyro.nanoPerLsb / 1e9
  return cuts.map(({ take, result }) => {
    const event = result.movement?.event
    if (event === undefined || !isUsable(result)) return null
    const [accel, turning] = rmsOf(take.counts, event.start, event.end, [true, true])
    const gyro = turning * dpsPerCount
    const durationMs = ((event.end - event.start) / target.rateHz) * 1000
    return { durationMs, accelSize: accel, gyroSize: gyro, turn: gyro * durationMs }
  })
}

/** At most MOST_TAKES takes, the same share of every gesture and tester. */
export function someTakes(prepared: Prepared): Prepared {
  if (prepared.takes.length <= MOST_TAKES) return prepared
  const sorted = [...prepared.takes].sort(
    (a, b) => a.gesture - b.gesture || a.take.testerCode.localeCompare(b.take.testerCode),
  )
  const step = sorted.length / MOST_TAKES
  const kept = sorted.filter((_, i) => Math.floor(i / step) !== Math.floor((i - 1) / step))
  return { ...prepared, takes: kept }
}
