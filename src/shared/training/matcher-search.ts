import type { Core, CoreCut } from '../core/core'
import { channelCount, type ModelNormaliser, type ModelSegmenter } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import { median } from '../statistics/summary'
import { type PerSensor, restNoise, rmsOf } from './amplitudes'
import { type Cut, cutTake } from './cut-take'
import {
  ALL_AXES,
  type CuttingOptions,
  cuttingModel,
  cuttingModelBytes,
  defaultNormaliser,
  GYRO_AXES,
  LEVELLED_CHANNELS,
} from './cutting-model'
import { cutStreamsOf, streamsOf } from './energy'
import { distancesBetween, type Example } from './examples'
import type { Segmented } from './judge-cut'
import type { Prepared, PreparedTake } from './prepare'
import { isClearlyLower, separationLosses } from './separation'
import { wasCompared } from './stream'
import { thinned } from './thin-takes'

/** How segments are normalised and warped. */
export interface Matcher {
  normaliser: ModelNormaliser
  band: number
  cost: 0 | 1
}

/** A take with the part of it that the segmenter cut out. */
export interface CutPrepared {
  take: PreparedTake
  result: { cut: Cut; movement: Segmented | null }
  /** What cut it by motion, and the movement with gravity, where that need not be done again. */
  byMotion?: { segmenter: ModelSegmenter; movement: CoreCut | null }
}

/** Examples that the search compares, at most. */
const SEARCH_EXAMPLES = 120
/** A movement must stand out of the noise of a hand at rest by this factor to be scaled up fully. */
const NOISE_FACTOR = 3
/** Window over which rest is judged. */
const REST_WINDOW_MS = 300

/** Standard errors by which another setting must be better than the one before it in the list. */
const CLEAR_ERRORS = 2

/** Weights of accelerometer and gyroscope that are tried, as int8 value of one rms. */
const GAINS: readonly PerSensor[] = [
  [32, 32],
  [32, 16],
  [16, 32],
]
const SCALE_MODES = [1, 0] as const

/** Channels that are compared, and which of them lose their mean. */
interface ChannelChoice {
  channelMask: number
  centreMask: number
}

const PLAIN: readonly ChannelChoice[] = [
  { channelMask: ALL_AXES, centreMask: ALL_AXES },
  { channelMask: ALL_AXES, centreMask: GYRO_AXES },
]
/**
 * More than twice the bytes and the work, for where accuracy is asked for first: with kernel features
 * 249 instead of 237 of 255 strokes cut from UTD-MHAD's streams were right, and 1,140 instead of
 * 1,118 of 1,152 takes of three demo libraries, always with testers held out.
 */
const LEVELLED: ChannelChoice = {
  channelMask: ALL_AXES | LEVELLED_CHANNELS,
  centreMask: GYRO_AXES,
}

/**
 * Chooses what a segment keeps: its size or only its shape (scale mode), its attitude or only its
 * changes (whether the accelerometer's mean stays), and which sensor weighs more. Shape, changes
 * and equal weights are left only for what tells the gestures clearly better apart.
 * @param levelled whether accuracy comes first: channels levelled by the gyroscope are then what
 *   others must be clearly better than
 * @param floors as noiseFloors has them, when that was asked before
 */
export function chooseMatcher(
  core: Core,
  prepared: Prepared,
  segmenter: ModelSegmenter,
  cuts: readonly CutPrepared[],
  levelled: boolean,
  floors: PerSensor = noiseFloors(core, prepared, segmenter),
): Matcher {
  const { length, bandShare } = prepared.settings
  const band = Math.min(length - 1, Math.round(bandShare * length))
  const some = sampleOf(cuts)
  let best: { matcher: Matcher; losses: Float64Array } | null = null
  const channels = levelled ? [LEVELLED, ...PLAIN] : PLAIN
  for (const normaliser of candidates(length, channels, floors, some)) {
    const matcher: Matcher = { normaliser, band, cost: 0 }
    const examples = readExamples(core, prepared, segmenter, matcher, some)
    const losses = separationLosses(distancesBetween(core, examples, warpOf(matcher)), examples)
    if (best === null || isClearlyLower(losses, best.losses, CLEAR_ERRORS)) {
      best = { matcher, losses }
    }
  }
  return best?.matcher ?? { normaliser: defaultNormaliser(length), band, cost: 0 }
}

export function warpOf({ normaliser, band, cost }: Matcher) {
  return { channels: channelCount(normaliser), band, cost }
}

/** Cuts takes again under the matcher's normaliser and keeps what the core would compare. */
export function readExamples(
  core: Core,
  prepared: Prepared,
  segmenter: ModelSegmenter,
  { normaliser }: Matcher,
  cuts: readonly Pick<CutPrepared, 'take' | 'byMotion'>[],
): Example[] {
  const button = prepared.settings.segmentation === 'button'
  const options = { segmenter, normaliser, rollAlign: prepared.settings.rollAlign, button }
  const takes = cuts.map(({ take }) => take)
  const queries = button
    ? queriesPressed(core, prepared, takes, options)
    : queriesCut(core, prepared, movementsOf(core, prepared, segmenter, cuts), options)
  return takes.flatMap(({ take: { id, testerCode: tester }, gesture }, i): Example[] => {
    const query = queries[i]
    return query ? [{ id, gesture, tester, query }] : []
  })
}

type Options = Required<CuttingOptions>

function queriesPressed(
  core: Core,
  { target }: Prepared,
  takes: readonly PreparedTake[],
  options: Options,
): (Int8Array | null)[] {
  core.load(cuttingModelBytes(target, options))
  const model = cuttingModel(target, options)
  return takes.map((take) => cutTake(core, take, model).movement?.query ?? null)
}

/** The take's counts with what of them is its movement. */
interface Moved {
  counts: Int16Array
  movement: CoreCut | null
}

function movementsOf(
  core: Core,
  { target }: Prepared,
  segmenter: ModelSegmenter,
  cuts: readonly Pick<CutPrepared, 'take' | 'byMotion'>[],
): Moved[] {
  const known = cuts.flatMap(({ take: { counts }, byMotion }): Moved[] =>
    byMotion?.segmenter === segmenter ? [{ counts, movement: byMotion.movement }] : [],
  )
  if (known.length === cuts.length) return known
  const takes = cuts.map(({ take }) => take)
  const counts = takes.map((take) => take.counts)
  const streams = streamsOf(core, target, counts, segmenter, true)
  return cutStreamsOf(core, takes, streams, segmenter).map(({ movement }, i) => {
    return { counts: counts[i]!, movement }
  })
}

function queriesCut(
  core: Core,
  { target }: Prepared,
  moved: readonly Moved[],
  options: Options,
): (Int8Array | null)[] {
  const segments = moved.map(({ counts, movement }) => {
    if (movement === null || !wasCompared(movement.event)) return null
    const { start, end } = movement.event
    return { counts: counts.subarray(start * AXES, end * AXES), gravity: movement.gravity }
  })
  core.load(cuttingModelBytes(target, options))
  const normalised = core.normalise(segments.filter((segment) => segment !== null)).values()
  return segments.map((segment) => (segment === null ? null : normalised.next().value!))
}

function* candidates(
  length: number,
  channels: readonly ChannelChoice[],
  floors: PerSensor,
  cuts: readonly CutPrepared[],
): Generator<ModelNormaliser> {
  for (const scaleMode of SCALE_MODES) {
    for (const { channelMask, centreMask } of channels) {
      const floor = scaleMode === 0 ? typicalSize(cuts, centreMask === ALL_AXES) : floors
      for (const [accel, gyro] of GAINS) {
        const gain = [accel, accel, accel, gyro, gyro, gyro]
        const bounded = floor.map((value) => Math.max(1, Math.min(65535, Math.round(value))))
        yield {
          length,
          channelMask,
          centreMask,
          scaleMode,
          gain,
          gravityGain: 32,
          floor: bounded as PerSensor,
        }
      }
    }
  }
}

/** Median rms of the segments: what one unit of gain stands for when size is kept. */
function typicalSize(cuts: readonly CutPrepared[], accelCentred: boolean): PerSensor {
  const sizes = cuts.flatMap(({ take, result }) => {
    const event = result.movement?.event
    return event ? [rmsOf(take.counts, event.start, event.end, [accelCentred, true])] : []
  })
  if (sizes.length === 0) return [1, 1]
  return [median(sizes.map((size) => size[0])), median(sizes.map((size) => size[1]))]
}

/** Rms below which a sensor's part of a segment is noise of a hand at rest, counts. */
export function noiseFloors(core: Core, prepared: Prepared, segmenter: ModelSegmenter): PerSensor {
  const { takes, backgrounds, target } = prepared
  const recordings = [...takes, ...backgrounds].map(({ counts }) => counts)
  const streams = streamsOf(core, target, recordings, segmenter)
  const phases = new Uint8Array(streams.energy.length)
  core.cut(streams, segmenter, phases)
  let at = 0
  const traced = recordings.map((counts, i) => {
    const length = streams.lengths[i]!
    // The stillness added behind a take is no rest that a hand has.
    const used = takes[i]?.to ?? length
    const [from, to] = [at, at + used]
    at += length
    return {
      counts: counts.subarray(0, used * AXES),
      energy: streams.energy.subarray(from, to),
      phase: phases.subarray(from, to),
    }
  })
  const window = Math.max(2, Math.round((REST_WINDOW_MS / 1000) * target.rateHz))
  const noise = restNoise(traced, segmenter.offThreshold, window) ?? [1, 1]
  return [NOISE_FACTOR * noise[0], NOISE_FACTOR * noise[1]]
}

function sampleOf(cuts: readonly CutPrepared[]): readonly CutPrepared[] {
  const usable = cuts.filter(({ result }) => isUsable(result))
  return thinned(usable, SEARCH_EXAMPLES, ({ take }) => take.gesture)
}

/** Whether there is a segment that can be compared. */
export function isUsable({ movement }: CutPrepared['result']): boolean {
  return movement !== null && wasCompared(movement.event)
}
