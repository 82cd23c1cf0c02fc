import type { AccelSign } from '../shared/model/library'

/** One sensor reading: SI accelerations (gravity included), deg/s, the event's own time. */
export interface MotionSample {
  tMs: number
  ax: number
  ay: number
  az: number
  gx: number
  gy: number
  gz: number
}

export type MotionStatus =
  | 'stopped'
  | 'starting'
  | 'running'
  /** The person or a setting said no. */
  | 'denied'
  /** Not HTTPS or localhost. */
  | 'insecure'
  /** No DeviceMotionEvent, or no reading within about a second. */
  | 'no-sensor'
  /** Ran before, then silent for more than a second. */
  | 'lost'

export interface MotionFacts {
  simulated: boolean
  hasGyro: boolean
  /** Median rate of the last seconds, Hz; 0 before there is one. */
  rateHz: number
  /** Step of the readings found so far; 0 when they do not look rounded. */
  accelStepMps2: number
  gyroStepDps: number
  /** 0 until the lay-flat step has been done. */
  accelSign: AccelSign
}

/** The phone's sensors, or the simulated phone: same interface, so every screen works at a desk. */
export interface MotionSource {
  readonly kind: 'phone' | 'simulated'
  /** Must be called from a tap: asks for permission. Resolves when readings flow or it failed. */
  start(): Promise<MotionStatus>
  stop(): void
  status(): MotionStatus
  facts(): MotionFacts
  /** Keeps the sign found by the lay-flat step. */
  setAccelSign(sign: AccelSign): void
  /** Calls back for every sample, on the main thread; returns the way to stop. */
  subscribe(onSample: (sample: MotionSample) => void): () => void
  onStatus(onChange: (status: MotionStatus) => void): () => void
}
