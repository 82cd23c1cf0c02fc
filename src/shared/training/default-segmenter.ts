import type { ModelSegmenter } from '../model/recogniser-model'
import type { Target } from '../model/target'

/** Longest segment the core holds, MVW_MAX_SEGMENT. */
const MAX_SEGMENT = 1023
/** Bytes of a sample in the core's ring. */
const SAMPLE_BYTES = 12

// Energy is counted in these, whatever the sensor's ranges are: 1/4096 g of change and 1/32.768
// deg/s of rotation. A change of 1 g then weighs as much as rotating at 125 deg/s.
const ACCEL_UNIT_NANO_G = 1e9 / 4096
const GYRO_UNIT_NANO_DPS = 1e9 / 32.768

/** Energies of the defaults, in those units: about 60 and 25 deg/s, or 0.5 and 0.2 g. */
const DEFAULT_ON = 2000
const DEFAULT_OFF = 800

/**
 * Segmenter for a target before anything was recorded for it; training starts its search here.
 * Times follow from the target's rate, weights from its sensitivities.
 */
export function defaultSegmenter(target: Target): ModelSegmenter {
  const samples = (ms: number) => Math.round((ms / 1000) * target.rateHz)
  return {
    accelWeight: weightOf(target.accel.nanoPerLsb / ACCEL_UNIT_NANO_G),
    gyroWeight: weightOf(target.gyro.nanoPerLsb / GYRO_UNIT_NANO_DPS),
    onThreshold: DEFAULT_ON,
    offThreshold: DEFAULT_OFF,
    onHold: clamp(samples(40), 1, 64),
    offHold: clamp(samples(250), 1, 255),
    minLength: Math.max(2, samples(150)),
    maxLength: longestSegment(target, samples(5000)),
    preRoll: Math.min(255, samples(80)),
    refractory: samples(100),
    accelLag: clamp(samples(40), 1, 16),
    smoothShift: clamp(Math.round(Math.log2(target.rateHz * 0.02)), 0, 6),
    restShift: clamp(Math.round(Math.log2(target.rateHz * 0.3)), 1, 8),
  }
}

/** Samples of a segment at most: what is asked for, within the core's limit and half the RAM. */
export function longestSegment(target: Target, wanted: number): number {
  const inRam = Math.floor(target.ramBytes / 2 / SAMPLE_BYTES)
  return clamp(wanted, 4, Math.max(4, Math.min(MAX_SEGMENT, inRam)))
}

function weightOf(countsToUnits: number): number {
  return clamp(Math.round(256 * countsToUnits), 1, 1023)
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value))
}
