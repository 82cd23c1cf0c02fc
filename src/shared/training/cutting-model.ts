import { encodeModel } from '../format/model-bytes'
import {
  channelCount,
  type ModelNormaliser,
  type ModelSegmenter,
  type RecogniserModel,
} from '../model/recogniser-model'
import type { Target } from '../model/target'
import { boardOf, longAxisIndex } from '../target/board'
import { defaultSegmenter } from './default-segmenter'

/** Roll counts as known unless the long axis is within 15° of the vertical: sin 15° = 0.26. */
const ROLL_MIN_PERCENT = 26

export const ALL_AXES = 0b111111
export const GYRO_AXES = 0b111000
/** Channels 6 to 12: gravity carried along by the gyroscope, and motion along and across it. */
export const LEVELLED_CHANNELS = 0b1111111000000

export interface CuttingOptions {
  segmenter?: ModelSegmenter
  normaliser?: ModelNormaliser
  rollAlign?: boolean
  button?: boolean
}

export function defaultNormaliser(length: number): ModelNormaliser {
  return {
    length,
    channelMask: ALL_AXES,
    centreMask: ALL_AXES,
    scaleMode: 1,
    gain: [32, 32, 32, 32, 32, 32],
    gravityGain: 32,
    floor: [1, 1],
  }
}

/** The least that the core normalises, for where only the cuts are looked at. */
export const CUTS_ONLY: ModelNormaliser = { ...defaultNormaliser(4), channelMask: 1, centreMask: 0 }

/**
 * A model that cuts and normalises but knows no gesture: its one template is flat and its one
 * threshold is nought, so that practically every movement comes out as a reject. For hands-free
 * recording, and to see what the core makes of takes before there are templates.
 */
export function cuttingModel(target: Target, options: CuttingOptions = {}): RecogniserModel {
  const normaliser = options.normaliser ?? defaultNormaliser(8)
  const flat = new Int8Array(normaliser.length * channelCount(normaliser))
  return {
    rollAlign: options.rollAlign ?? false,
    button: options.button ?? false,
    board: boardOf(target),
    segmenter: options.segmenter ?? defaultSegmenter(target),
    normaliser,
    longAxis: longAxisIndex(target),
    rollMinPercent: ROLL_MIN_PERCENT,
    band: 0,
    cost: 0,
    marginPercent: 0,
    gestures: [{ id: '', name: '', threshold: 0, templates: [flat], templateTakeIds: [''] }],
    kernel: null,
  }
}

/** The same as bytes, ready for `Core.load`. */
export function cuttingModelBytes(target: Target, options: CuttingOptions = {}): Uint8Array {
  return encodeModel(cuttingModel(target, options))
}
