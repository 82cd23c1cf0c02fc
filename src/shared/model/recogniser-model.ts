/**
 * What training makes and the core runs: the fields of `mvw_model` in `movewright.h`, where meaning,
 * unit and range of each stand. Names follow the header.
 */
export const MODEL_VERSION = 1

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
}

export function channelCount(normaliser: ModelNormaliser): number {
  let count = 0
  for (let axis = 0; axis < 6; axis++) count += (normaliser.channelMask >> axis) & 1
  return count
}
