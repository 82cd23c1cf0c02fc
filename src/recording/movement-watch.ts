import type { MotionSample } from '../sensors/motion-source'
import { LOOK_BACK_MS, MOVING_DPS, MOVING_MPS2 } from './movement'

/** A rest this long ends a movement; shorter ones are part of it, as between two knocks, ms. */
const ENDING_REST_MS = 600
/** Who has not begun by then did not hear or will not, ms. */
const LATEST_BEGIN_MS = 5000
/** A hand that never rests is cut off here, ms: longer than any movement that a model holds. */
const LONGEST_MS = 8000

export type WatchState = 'waiting' | 'moving' | 'over'

/**
 * Follows one movement that somebody was asked for, to know when a take of it may end. As coarse as
 * the quality words; what of the take is the movement is for the core's segmenter to say.
 */
export class MovementWatch {
  #recent: MotionSample[] = []
  #startMs: number | null = null
  #beganMs: number | null = null
  #lastMovingMs = 0
  #isOver = false

  add(sample: MotionSample): WatchState {
    this.#startMs ??= sample.tMs
    this.#recent.push(sample)
    while (sample.tMs - this.#recent[0]!.tMs > LOOK_BACK_MS) this.#recent.shift()
    if (isMoving(sample, this.#recent[0]!)) {
      this.#beganMs ??= sample.tMs
      this.#lastMovingMs = sample.tMs
    }
    this.#isOver ||= this.#endsAt(sample.tMs, this.#startMs)
    if (this.#isOver) return 'over'
    return this.#beganMs === null ? 'waiting' : 'moving'
  }

  #endsAt(tMs: number, startMs: number): boolean {
    if (this.#beganMs === null) return tMs - startMs >= LATEST_BEGIN_MS
    return tMs - this.#lastMovingMs >= ENDING_REST_MS || tMs - this.#beganMs >= LONGEST_MS
  }
}

function isMoving(sample: MotionSample, before: MotionSample): boolean {
  const rateDps = Math.hypot(sample.gx, sample.gy, sample.gz)
  const changeMps2 = Math.hypot(sample.ax - before.ax, sample.ay - before.ay, sample.az - before.az)
  return rateDps >= MOVING_DPS || changeMps2 >= MOVING_MPS2
}
