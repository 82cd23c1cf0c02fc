import type { FeatureShape } from '../../format/kernel-bytes'
import type { Random } from '../../statistics/random'
import { shuffled } from '../../statistics/shuffled'

/** Triples of heavy taps among nine. */
const KERNELS = 84
const TAPS = 9
/** Dilations between 1 and the widest that fits, at most. */
const MOST_DILATIONS = 6
/** A feature adds up this many channels at most, as in the method's reference. */
const MOST_CHANNELS = 9

/** A feature whose bias is still to be found: at this quantile of its outputs. */
export interface PlannedFeature {
  shape: FeatureShape
  quantile: number
}

/**
 * Draws features: every pairing of kernel, dilation and signal (values or differences) comes up once,
 * in random order, before any comes up again; each with a random set of channels, few more often than
 * many. Quantiles follow the golden ratio, so any number of features is spread evenly (both as in
 * Dempster, Schmidt, Webb: MINIROCKET, KDD 2021). The first features of a longer plan are those of a
 * shorter one with the same random stream.
 * @param length points of a segment
 * @param channels of a segment
 */
export function planFeatures(
  count: number,
  length: number,
  channels: number,
  random: Random,
): PlannedFeature[] {
  const pairs = [false, true].flatMap((differences) =>
    dilationsFor(length).flatMap((dilation) =>
      Array.from({ length: KERNELS }, (_, kernel) => ({ kernel, dilation, differences })),
    ),
  )
  const order = shuffled(pairs, random)
  return Array.from({ length: count }, (_, index) => ({
    shape: { ...order[index % order.length]!, channels: drawChannels(channels, random), bias: 0 },
    quantile: ((index + 1) * ((Math.sqrt(5) + 1) / 2)) % 1,
  }))
}

/** From 1 to where nine taps span the segment, evenly in logarithms. */
export function dilationsFor(length: number): number[] {
  const widest = Math.max(1, Math.floor((length - 1) / (TAPS - 1)))
  const steps = Math.min(MOST_DILATIONS, Math.floor(Math.log2(widest)) + 1)
  const exponent = (i: number) => (steps === 1 ? 0 : (Math.log2(widest) * i) / (steps - 1))
  const all = Array.from({ length: steps }, (_, i) => Math.floor(2 ** exponent(i) + 1e-9))
  return [...new Set(all)]
}

/** Bit mask; the number of bits is drawn evenly in logarithms. */
function drawChannels(channels: number, random: Random): number {
  const most = Math.min(channels, MOST_CHANNELS)
  const count = Math.min(most, Math.floor(2 ** random.uniform(0, Math.log2(most + 0.999))))
  let mask = 0
  for (let left = count; left > 0; ) {
    const bit = 1 << random.integer(channels)
    if (mask & bit) continue
    mask |= bit
    left--
  }
  return mask
}
