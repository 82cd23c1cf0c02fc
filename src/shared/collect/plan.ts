import type { Hand } from '../model/library'
import type { Target } from '../model/target'

/** Which hand takes are asked of: the tester's own, one of the two, or every take with both. */
export const PLAN_HANDS = ['own', 'left', 'right', 'both'] as const
export type PlanHand = (typeof PLAN_HANDS)[number]

/** 'shuffled': gestures mixed by the session's seed; 'blocked': one gesture after the other. */
export const PLAN_ORDERS = ['shuffled', 'blocked'] as const
export type PlanOrder = (typeof PLAN_ORDERS)[number]

/** 'free': held as the tester likes; 'marked': a mark on the prop faces the tester. */
export const PLAN_GRIPS = ['free', 'marked'] as const
export type PlanGrip = (typeof PLAN_GRIPS)[number]

/**
 * One of the designer's takes, thinned to fit a code: means over even periods, in W3C axes and sign.
 * `demonstrationSamples` gives samples again.
 */
export interface Demonstration {
  /** From one value to the next, whole ms; 20 to 500. */
  periodMs: number
  /** n × 6, whole -127 to 127: accelerometer in steps of 0.5 m/s², gyroscope in steps of 16 deg/s. */
  values: number[]
}

export interface PlanGesture {
  /** Id of the gesture in the designer's library. */
  gestureId: string
  name: string
  /** Takes asked of each tester, 1 to 50; with hand 'both', of each hand. */
  takes: number
  /** What the hand does, for the tester; at most 200 characters, may be empty. */
  words: string
  demonstration: Demonstration | null
}

/** What a tester is asked to perform, as the designer wrote it. */
export interface Plan {
  id: string
  /** Library it collects for, and its name as testers see it. */
  libraryId: string
  title: string
  gestures: PlanGesture[]
  order: PlanOrder
  hand: PlanHand
  grip: PlanGrip
  /** A rest after so many takes, 0 for none, and its length, ms. */
  restEvery: number
  restMs: number
  /** Recording of everything that is no gesture, at the end, ms; 0 for none. */
  backgroundMs: number
  /** Which of several plans it is, where one code could not hold all gestures; 1 of 1 otherwise. */
  part: { number: number; of: number }
  /** Address of a shared folder that testers may send their session to; absent where there is none. */
  folder?: string
  /** What the library's sensor can show, by which takes are judged; absent where nobody knows. */
  ranges?: Pick<Target, 'accel' | 'gyro'>
}

/** One thing asked of the tester, in order. */
export type Prompt =
  | {
      kind: 'take'
      gestureId: string
      /** Of this gesture and hand, from 1. */
      number: number
      of: number
      /** Hand to perform with; null: the tester's own. */
      hand: Exclude<Hand, 'unknown'> | null
    }
  | { kind: 'rest'; durationMs: number }
  | { kind: 'background'; durationMs: number }
