import type { Rate } from '../model/evaluation'

/**
 * What a designer can do about grip:
 * - 'mark': a mark on the prop shows how to hold it; nothing is aligned.
 * - 'gravity': gravity before the movement turns it to a standard roll, so it has to start near level.
 * - 'copies': training on copies turned all round, with more templates; nothing is aligned.
 */
export const REMEDIES = ['mark', 'gravity', 'copies'] as const
export type Remedy = (typeof REMEDIES)[number]

export interface GripPoint {
  angleDeg: number
  /** Held-out takes named rightly; rejected ones are not. */
  recall: Rate
}

export interface RemedyScore {
  remedy: Remedy
  /** By roll, from -180 to 180. */
  roll: GripPoint[]
  /** By tilt of the mounting, from -30 to 30, at no roll. */
  tilt: GripPoint[]
  /** Of the model trained on everything held in: bytes of its tables, mean over the rounds. */
  tableBytes: number
  /** Takes whose roll could not be known at no roll and no tilt; only with 'gravity'. */
  rollUnknown: Rate | null
}

export interface GripTolerance {
  remedies: RemedyScore[]
  /** How takes were held out: as in an evaluation. */
  holdout: 'tester' | 'take'
  rounds: number
  /** Gravity gives no roll while the long axis is this near to the vertical, deg. */
  verticalDeg: number
}

/** Rolls that are measured: closer together where a mark would keep the hand. */
export const ROLLS_DEG = [
  -180, -150, -120, -90, -75, -60, -45, -30, -15, 0, 15, 30, 45, 60, 75, 90, 120, 150, 180,
]
export const TILTS_DEG = [-30, -20, -10, 0, 10, 20, 30]

/**
 * How far from 0 to both sides recall stays at or above a limit, by straight lines between points; 0
 * when it is below the limit at 0 already.
 */
export function toleranceDeg(points: readonly GripPoint[], limit: number): number {
  const side = (sign: 1 | -1) => {
    const outward = points
      .filter(({ angleDeg }) => sign * angleDeg >= 0)
      .sort((a, b) => Math.abs(a.angleDeg) - Math.abs(b.angleDeg))
    let reach = 0
    for (const [i, { angleDeg, recall }] of outward.entries()) {
      const angle = Math.abs(angleDeg)
      if (recall.value >= limit) {
        reach = angle
        continue
      }
      const before = outward[i - 1]
      if (before === undefined) return 0
      const share = (before.recall.value - limit) / (before.recall.value - recall.value)
      return reach + share * (angle - Math.abs(before.angleDeg))
    }
    return reach
  }
  return Math.min(side(1), side(-1))
}
