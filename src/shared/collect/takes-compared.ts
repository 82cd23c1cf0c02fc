import type { Hand } from '../model/library'

/** How a take lies among the others of its gesture. */
export interface ComparedTake {
  takeId: string
  gestureId: string
  testerCode: string
  hand: Hand
  /** Rate of the phone that recorded it, Hz. */
  rateHz: number
  device: string
  /**
   * Distance to the nearest takes of its gesture, of other testers where there are any, over the
   * median of the gesture: 1 is usual. Null where no movement was cut, or there is nothing to
   * compare it with.
   */
  ratio: number | null
  /** Far from its gesture's others: see `OUTLIER_SCORE`. */
  far: boolean
  /** How it was cut; 'ok' when one movement was found. */
  cut: 'ok' | 'missed' | 'split' | 'long' | 'short'
  /** Gesture whose takes it is nearer to than to its own; null when its own is nearest, or not far. */
  nearer: string | null
}

/** Takes of one kind of phone, rate or hand beside the others. */
export interface GroupRow {
  name: string
  testers: number
  takes: number
  /** Takes that were compared, and the median of their ratios; NaN when none was. */
  compared: number
  medianRatio: number
  far: number
  /** Takes in which not just one movement was found. */
  notCutOnce: number
}

export interface TakesCompared {
  takes: ComparedTake[]
  devices: GroupRow[]
  rates: GroupRow[]
  hands: GroupRow[]
}
