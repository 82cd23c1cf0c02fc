import { BOARD_ROUTINE } from '../../words/en/board-routine'
import type { BoardLog } from '../log/board-log'

/** Steps of the routine at the bench. 'free' is a log without poses, for what needs none. */
export type StepId =
  | 'still'
  | 'face+x'
  | 'face-x'
  | 'face+y'
  | 'face-y'
  | 'face+z'
  | 'face-z'
  | 'turn-x'
  | 'turn-y'
  | 'turn-z'
  | 'shake'
  | 'free'

export interface BenchStep {
  id: StepId
  name: string
  /** What to do, one or two sentences. */
  instruction: string
  /** How long to log, s. */
  seconds: number
}

/** A log without poses: for what needs none, and to be set beside the phone. */
export const FREE_STEP: BenchStep = {
  id: 'free',
  ...BOARD_ROUTINE.free,
  seconds: 30,
}

/** Log of one step. */
export interface BenchPart {
  step: StepId
  log: BoardLog
}

const AXES = ['x', 'y', 'z'] as const

function faces(): BenchStep[] {
  return AXES.flatMap((axis) =>
    (['+', '-'] as const).map((sign): BenchStep => {
      return {
        id: `face${sign}${axis}`,
        ...BOARD_ROUTINE.face(axis, sign === '+' ? 'up' : 'down'),
        seconds: 2,
      }
    }),
  )
}

function turns(): BenchStep[] {
  return AXES.map((axis): BenchStep => {
    return {
      id: `turn-${axis}`,
      ...BOARD_ROUTINE.turn(axis),
      seconds: 7,
    }
  })
}

/** The whole routine, in order; about a minute of logging. */
export const BENCH_STEPS: readonly BenchStep[] = [
  {
    id: 'still',
    ...BOARD_ROUTINE.still,
    seconds: 10,
  },
  ...faces(),
  ...turns(),
  {
    id: 'shake',
    ...BOARD_ROUTINE.shake,
    seconds: 3,
  },
]

export function benchStep(id: StepId): BenchStep {
  return BENCH_STEPS.find((step) => step.id === id) ?? FREE_STEP
}
