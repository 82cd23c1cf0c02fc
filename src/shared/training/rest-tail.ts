import { AXES } from '../model/sample'

/**
 * Many takes end the moment the hand does, and the core closes a segment only after a while below
 * its threshold. So every take goes on at rest for this long: the longest hold that training tries,
 * and time for the energy to fade.
 */
const REST_MS = 1000
/** Length of the quietest stretch, which is what rest looks like in this hand. */
const TEXTURE_MS = 300
/**
 * A quietest stretch with more than this share of the liveliest one's motion is no rest, but the
 * slow part of a movement: its texture is damped to this share.
 */
const REST_SHARE = 0.03

/**
 * Counts with rest behind their end: the last acceleration held, with the tremor and noise of the
 * take's own quietest stretch on top, to and fro. Perfect stillness would close any segment and
 * make thresholds within the tremor look good.
 * @param counts n × 6
 */
export function addRest(counts: Int16Array, rateHz: number): Int16Array {
  const length = counts.length / AXES
  const extra = Math.ceil((REST_MS / 1000) * rateHz)
  const longer = new Int16Array((length + extra) * AXES)
  longer.set(counts)
  if (length === 0) return longer
  const texture = quietest(counts, Math.round((TEXTURE_MS / 1000) * rateHz))
  const last = counts.subarray(counts.length - AXES)
  for (let i = 0; i < extra; i++) {
    for (let axis = 0; axis < AXES; axis++) {
      const held = axis < 3 ? last[axis]! : 0
      const value = held + (texture === null ? 0 : texture[fold(i, texture.length)]![axis]!)
      longer[(length + i) * AXES + axis] = Math.max(-32768, Math.min(32767, value))
    }
  }
  return longer
}

/** 0 1 2 … n-1 n-1 … 1 0 0 1 …: there and back without a jump. */
function fold(i: number, n: number): number {
  const at = i % (2 * n)
  return at < n ? at : 2 * n - 1 - at
}

/** The quietest stretch without its mean, sample by sample; null when there is too little of it. */
function quietest(counts: Int16Array, samples: number): number[][] | null {
  const length = counts.length / AXES
  if (samples < 2 || length < 2 * samples) return null
  let least = { from: 0, motion: Number.POSITIVE_INFINITY }
  let most = 0
  for (let from = 0; from + samples <= length; from++) {
    const motion = motionIn(counts, from, samples)
    if (motion < least.motion) least = { from, motion }
    most = Math.max(most, motion)
  }
  const damping = Math.min(1, (REST_SHARE * most) / Math.max(1, least.motion))
  const mean = Array.from({ length: AXES }, (_, axis) => meanOf(counts, least.from, samples, axis))
  return Array.from({ length: samples }, (_, i) =>
    mean.map((value, axis) =>
      Math.round(damping * (counts[(least.from + i) * AXES + axis]! - value)),
    ),
  )
}

/** Sum of the deviations of all axes from their means, counts. */
function motionIn(counts: Int16Array, from: number, samples: number): number {
  let motion = 0
  for (let axis = 0; axis < AXES; axis++) {
    const mean = meanOf(counts, from, samples, axis)
    for (let i = 0; i < samples; i++) motion += Math.abs(counts[(from + i) * AXES + axis]! - mean)
  }
  return motion
}

function meanOf(counts: Int16Array, from: number, samples: number, axis: number): number {
  let sum = 0
  for (let i = 0; i < samples; i++) sum += counts[(from + i) * AXES + axis]!
  return sum / samples
}
