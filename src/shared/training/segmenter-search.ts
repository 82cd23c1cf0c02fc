import type { Core, EnergyStreams } from '../core/core'
import type { ModelSegmenter } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import type { Target } from '../model/target'
import { quantile } from '../statistics/summary'
import { type Cut, cutTake } from './cut-take'
import { CUTS_ONLY, cuttingModel, cuttingModelBytes, defaultNormaliser } from './cutting-model'
import { defaultSegmenter, longestSegment } from './default-segmenter'
import { cutStreamsOf, energiesOf, streamsOf } from './energy'
import { distancesBetween } from './examples'
import type { Segmented } from './judge-cut'
import { type Matcher, readExamples, warpOf } from './matcher-search'
import type { Prepared } from './prepare'
import { separationLoss } from './separation'
import { wasCompared } from './stream'
import { thinned } from './thin-takes'

/** Proposed parameters and what they make of the takes they were proposed from. */
export interface SegmenterProposal {
  segmenter: ModelSegmenter
  found: Record<Cut, number>
  /** Movements cut in the background, a minute; NaN without background. */
  backgroundPerMinute: number
}

// The search tries every combination on the energies of the takes.
const ON_STEPS = 7
/** Lower ones let the fading of a movement and the hand's tremor keep it open, and answer later. */
const OFF_SHARES = [0.45, 0.65]
const OFF_HOLDS_MS = [60, 80, 120, 200, 300, 450, 600]
/** Takes and background that the search looks at, at most. */
const SEARCH_TAKES = 150
const SEARCH_BACKGROUND_S = 180

// What is given up for what, in takes cut wrong: a split take still has a usable longest segment;
// a later end makes every answer later; a movement cut in the background is most often rejected.
const SPLIT_COST = 0.5
// Low enough that movements with pauses inside are waited for: of 255 takes of eight strokes in
// UTD-MHAD's streams 232 instead of 207 were right, and daily movements were cut 41 instead of 128
// times; where movements have no pauses, as in the demo, the hold stays short.
const COST_PER_SECOND_OF_HOLD = 0.1
const COST_PER_BACKGROUND_MOVEMENT_A_MINUTE = 0.001

/** Candidates with at most this much more cost are also judged by what they cut out, */
const NEARLY_AS_GOOD = 0.05
/** and so many of them, as each is a table of all distances. */
const MOST_COMPARED = 16

/**
 * Least energy that may start a movement: some ten steps of a phone that rounds to 0.1 m/s². Below,
 * takes in which nothing moved would be cut out of their noise.
 */
const LEAST_ON = 400

/** Lengths asked for, as shares of the shortest and longest usual movement. */
const MIN_SHARE = 0.5
// The longest sets the ring, most of the board's RAM: 1.6 gave the same answers for 400 bytes more.
const MAX_SHARE = 1.25

/**
 * Proposes when a movement starts and ends, from takes that hold one movement each and from
 * background. A threshold is scored with its neighbours (a quarter each), so that the choice lies
 * on a plateau and still cuts a tester who moves somewhat more gently or strongly.
 */
export function proposeSegmenter(core: Core, prepared: Prepared): SegmenterProposal {
  const { target } = prepared
  const base = defaultSegmenter(target)
  const all = lookAt(core, prepared, base)
  if (prepared.settings.segmentation === 'button' || prepared.takes.length === 0) {
    return measure(core, all, withLengths(core, all, base))
  }
  const some = lookAt(core, sampleOf(prepared), base)
  const onThresholds = thresholdGrid(core, some.prepared, base)
  const candidates: Candidate[] = []
  for (const offHoldMs of OFF_HOLDS_MS) {
    for (const share of OFF_SHARES) {
      const tried = onThresholds.map((on) => withThresholds(base, target, on, share, offHoldMs))
      const costs = tried.map((segmenter) => costOf(measure(core, some, segmenter), target))
      for (const [at, segmenter] of tried.entries()) {
        candidates.push({ segmenter, cost: smoothed(costs, at) })
      }
    }
  }
  const best = mostTelling(core, some.prepared, candidates)
  return measure(core, all, withLengths(core, all, best?.segmenter ?? base))
}

/** A library with the energy of its recordings, which no threshold changes. */
interface Looked {
  prepared: Prepared
  takes: EnergyStreams
  backgrounds: EnergyStreams
}

function lookAt(core: Core, prepared: Prepared, base: ModelSegmenter): Looked {
  const streams = (recordings: readonly { counts: Int16Array }[]) => {
    const counts = recordings.map((recording) => recording.counts)
    return streamsOf(core, prepared.target, counts, base)
  }
  return {
    prepared,
    takes: streams(prepared.takes),
    backgrounds: streams(prepared.backgrounds),
  }
}

interface Candidate {
  segmenter: ModelSegmenter
  cost: number
}

/**
 * Of the candidates that cut about as well as the best, the one whose segments also tell the
 * gestures apart best: cutting cannot see that a late start has lost the beginning of a movement,
 * or that an early one has taken rest along.
 */
function mostTelling(core: Core, prepared: Prepared, candidates: Candidate[]): Candidate | null {
  const ranked = [...candidates].sort((a, b) => a.cost - b.cost)
  const limit = (ranked[0]?.cost ?? 0) + NEARLY_AS_GOOD
  let best: Candidate | null = null
  for (const { segmenter, cost } of ranked.slice(0, MOST_COMPARED)) {
    if (cost > limit) break
    const total = cost + lossOf(core, prepared, segmenter)
    if (best === null || total < best.cost) best = { segmenter, cost: total }
  }
  return best
}

function lossOf(core: Core, prepared: Prepared, segmenter: ModelSegmenter): number {
  const { length, bandShare } = prepared.settings
  const matcher: Matcher = {
    normaliser: defaultNormaliser(length),
    band: Math.min(length - 1, Math.round(bandShare * length)),
    cost: 0,
  }
  const cuts = prepared.takes.map((take) => ({ take }))
  const examples = readExamples(core, prepared, segmenter, matcher, cuts)
  return separationLoss(distancesBetween(core, examples, warpOf(matcher)), examples)
}

/** Runs a segmenter over takes and background and counts what comes out. */
function measure(core: Core, looked: Looked, segmenter: ModelSegmenter): SegmenterProposal {
  const { prepared, backgrounds } = looked
  const found: Record<Cut, number> = { ok: 0, missed: 0, split: 0, long: 0, short: 0 }
  for (const { cut } of cutAll(core, looked, segmenter)) found[cut]++
  // With a button nothing is cut unless it is pressed.
  const isPressed = prepared.settings.segmentation === 'button'
  const cuts = isPressed ? [] : core.cut(backgrounds, segmenter)
  const movements = cuts.reduce((sum, each) => sum + each.length, 0)
  const minutes = backgrounds.energy.length / prepared.target.rateHz / 60
  return { segmenter, found, backgroundPerMinute: movements / minutes }
}

function cutAll(
  core: Core,
  { prepared, takes }: Looked,
  segmenter: ModelSegmenter,
): { cut: Cut; movement: Segmented | null }[] {
  if (prepared.settings.segmentation !== 'button') {
    return cutStreamsOf(core, prepared.takes, takes, segmenter)
  }
  const options = { segmenter, normaliser: CUTS_ONLY, button: true }
  core.load(cuttingModelBytes(prepared.target, options))
  const model = cuttingModel(prepared.target, options)
  return prepared.takes.map((take) => cutTake(core, take, model))
}

function costOf(
  { segmenter, found, backgroundPerMinute }: SegmenterProposal,
  target: Target,
): number {
  const takes = found.ok + found.missed + found.split + found.long + found.short
  const wrong = found.missed + found.long + found.short + SPLIT_COST * found.split
  const holdS = segmenter.offHold / target.rateHz
  const background = Number.isNaN(backgroundPerMinute) ? 0 : backgroundPerMinute
  return (
    wrong / takes +
    COST_PER_SECOND_OF_HOLD * holdS +
    COST_PER_BACKGROUND_MOVEMENT_A_MINUTE * background
  )
}

function smoothed(costs: readonly number[], at: number): number {
  const own = costs[at]!
  return 0.5 * own + 0.25 * (costs[at - 1] ?? own + 0.1) + 0.25 * (costs[at + 1] ?? own + 0.1)
}

function withThresholds(
  base: ModelSegmenter,
  target: Target,
  on: number,
  offShare: number,
  offHoldMs: number,
): ModelSegmenter {
  return {
    ...base,
    onThreshold: on,
    offThreshold: Math.max(1, Math.round(on * offShare)),
    offHold: Math.max(1, Math.min(255, Math.round((offHoldMs / 1000) * target.rateHz))),
  }
}

/** Even steps in log energy from well above rest to well below the weakest takes' peaks. */
function thresholdGrid(core: Core, prepared: Prepared, base: ModelSegmenter): number[] {
  const counts = prepared.takes.map((take) => take.counts)
  const quiet: number[] = []
  const peaks: number[] = []
  for (const [i, all] of energiesOf(core, prepared.target, counts, base).entries()) {
    const { from, to } = prepared.takes[i]!
    const energy = all.subarray(from, to)
    quiet.push(quantile(energy, 0.1))
    peaks.push(quantile(energy, 1))
  }
  const high = Math.max(2 * LEAST_ON, quantile(peaks, 0.1) * 0.8)
  const low = Math.max(LEAST_ON, Math.min(high / 2, quantile(quiet, 0.9) * 1.5), high / 30)
  const step = (high / low) ** (1 / (ON_STEPS - 1))
  return Array.from({ length: ON_STEPS }, (_, i) => Math.round(low * step ** i))
}

/** Length limits from the movements that the thresholds cut. */
function withLengths(core: Core, looked: Looked, segmenter: ModelSegmenter): ModelSegmenter {
  const lengths: number[] = []
  for (const { movement } of cutAll(core, looked, segmenter)) {
    if (movement && wasCompared(movement.event)) {
      lengths.push(movement.event.end - movement.event.start)
    }
  }
  if (lengths.length === 0) return segmenter
  const maxLength = longestSegment(
    looked.prepared.target,
    Math.ceil(MAX_SHARE * quantile(lengths, 0.98)) + segmenter.preRoll,
  )
  const minLength = Math.max(2, Math.floor(MIN_SHARE * quantile(lengths, 0.02)))
  const preRoll = Math.min(segmenter.preRoll, maxLength - 1)
  return { ...segmenter, preRoll, maxLength, minLength: Math.min(minLength, maxLength) }
}

/** Some takes of each gesture and the first minutes of background, so that a search takes seconds. */
function sampleOf(prepared: Prepared): Prepared {
  const takes = [...thinned(prepared.takes, SEARCH_TAKES, ({ gesture }) => gesture)]
  let left = Math.floor(SEARCH_BACKGROUND_S * prepared.target.rateHz) * AXES
  const backgrounds = []
  for (const each of prepared.backgrounds) {
    if (left <= 0) break
    const counts = each.counts.subarray(0, left)
    left -= counts.length
    backgrounds.push({ ...each, counts })
  }
  return { ...prepared, takes, backgrounds }
}
