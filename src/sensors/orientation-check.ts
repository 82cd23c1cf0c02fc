import type { AccelSign } from '../shared/model/library'
import { signFromOrientation } from './accel-sign'
import type { MotionSample } from './motion-source'
import { REST_NEEDED_MS, restingAcceleration } from './rest'

/** Angles older than this are not compared with a reading. */
const ANGLES_FRESH_MS = 200
/** A little more than the rest needs, so that a window is long enough at any rate. */
const WINDOW_MS = REST_NEEDED_MS + 100

/** Finds the accelerometer's sign in passing, as soon as the phone rests for a moment. */
export class OrientationCheck {
  #angles: { tMs: number; betaDeg: number; gammaDeg: number } | null = null
  #window: MotionSample[] = []

  addAngles(tMs: number, betaDeg: number | null, gammaDeg: number | null): void {
    if (betaDeg === null || gammaDeg === null) return
    this.#angles = { tMs, betaDeg, gammaDeg }
  }

  /** The sign, or 0 while it is not clear. Looks once for each window of samples. */
  addSample(sample: MotionSample): AccelSign {
    this.#window.push(sample)
    if (sample.tMs - this.#window[0]!.tMs < WINDOW_MS) return 0
    const window = this.#window
    this.#window = []
    const angles = this.#angles
    if (angles === null || sample.tMs - angles.tMs > ANGLES_FRESH_MS) return 0
    const rest = restingAcceleration(window)
    return rest.ok ? signFromOrientation(rest.value, angles.betaDeg, angles.gammaDeg) : 0
  }
}
