import type { MotionSample } from './motion-source'

/** The fields of a `DeviceMotionEvent` that count; any of them may be missing. */
export interface MotionEventLike {
  readonly timeStamp: number
  readonly accelerationIncludingGravity?: {
    readonly x: number | null
    readonly y: number | null
    readonly z: number | null
  } | null
  readonly rotationRate?: {
    readonly alpha: number | null
    readonly beta: number | null
    readonly gamma: number | null
  } | null
}

export interface Reading {
  sample: MotionSample
  /** False when the event held no angular rate; the sample's is then zero. */
  hasGyro: boolean
}

/**
 * Reads a motion event. Units and axes are those of the W3C Device Orientation and Motion
 * specification: m/s² with gravity, deg/s with alpha, beta, gamma about x, y, z, on axes fixed to
 * the device. The event's own time is used, as `interval` is a constant that says nothing.
 * Null when the event holds no acceleration: browsers send such events when there is no sensor or
 * no permission.
 */
export function toReading(event: MotionEventLike): Reading | null {
  const { x, y, z } = event.accelerationIncludingGravity ?? {}
  if (x == null || y == null || z == null) return null
  const { alpha, beta, gamma } = event.rotationRate ?? {}
  return {
    sample: {
      tMs: event.timeStamp,
      ax: x,
      ay: y,
      az: z,
      gx: alpha ?? 0,
      gy: beta ?? 0,
      gz: gamma ?? 0,
    },
    hasGyro: alpha != null && beta != null && gamma != null,
  }
}
