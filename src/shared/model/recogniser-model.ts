/**
 * What training makes and the core runs: the fields of `mvw_model` in `mvw_model.h`, where meaning,
 * unit and range of each stand. Names follow the header.
 */
export const MODEL_VERSION = 2

/** MVW_CHANNELS: six axes, then levelled acceleration, levelled rotation and gravity. */
export const CHANNELS = 13

export type MatcherKind = 'template' | 'kernel' | 'both'

export interface ModelBoard {
  rateMillihertz: number
  accelNgPerLsb: number
  gyroNdpsPerLsb: number
}

export interface ModelSegmenter {
  accelWeight: number
  gyroWeight: number
  onThreshold: number
  offThreshold: number
  onHold: number
  offHold: number
  minLength: number
  maxLength: number
  preRoll: number
  refractory: number
  accelLag: number
  smoothShift: number
  restShift: number
}

export interface ModelNormaliser {
  length: number
  channelMask: number
  centreMask: number
  /** 0 fixed, 1 by group, 2 by channel. */
  scaleMode: 0 | 1 | 2
  /** Six values. */
  gain: number[]
  /** Of the gravity channels; 32 by default. */
  gravityGain: number
  /** Accelerometer, gyroscope. */
  floor: [number, number]
}

export interface ModelGesture {
  /** Id and name stay on the phone and in comments of the export; the core knows the index. */
  id: string
  name: string
  threshold: number
  /** Each length × channels int8 values, points in time order. */
  templates: Int8Array[]
  /** Recording each template was cut from, for evidence. */
  templateTakeIds: string[]
}

/** One kernel over some channels of the segment; layout and meaning in `mvw_model.h`. */
export interface KernelFeature {
  /** Number of the triple of heavy taps, 0 to 83. */
  kernel: number
  /** Whether differences from point to point are taken first. */
  differences: boolean
  dilation: number
  /** Bit i: the i-th channel of the segment. */
  channels: number
  bias: number
  /** Pools × gestures, the gestures of a pool side by side. */
  weights: Int8Array
}

export interface ModelKernel {
  /** 2: counts in either half; 3: also the longest run. */
  pools: 2 | 3
  /** Per doubled template distance; 0 without templates. */
  logWeight: number
  /** One a gesture. */
  bases: number[]
  features: KernelFeature[]
}

export interface RecogniserModel {
  rollAlign: boolean
  button: boolean
  board: ModelBoard
  segmenter: ModelSegmenter
  normaliser: ModelNormaliser
  /** 0 x, 1 y, 2 z. */
  longAxis: 0 | 1 | 2
  rollMinPercent: number
  band: number
  /** 0 absolute, 1 squared. */
  cost: 0 | 1
  marginPercent: number
  gestures: ModelGesture[]
  /** Null: distances are those to templates alone. */
  kernel: ModelKernel | null
}

/** What the core calls this model's way to compare. */
export function matcherKind(model: RecogniserModel): MatcherKind {
  if (model.kernel === null) return 'template'
  return model.gestures.some((gesture) => gesture.templates.length > 0) ? 'both' : 'kernel'
}

export function channelCount(normaliser: ModelNormaliser): number {
  let count = 0
  for (let id = 0; id < CHANNELS; id++) count += (normaliser.channelMask >> id) & 1
  return count
}

/** Entries of the core's row buffer: one row of the warping matrix, then a score a gesture. */
export function rowValues({ normaliser, kernel, gestures }: RecogniserModel): number {
  return normaliser.length + (kernel === null ? 0 : gestures.length)
}
