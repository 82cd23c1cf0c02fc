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
  name: 'Moved freely',
  instruction: 'Move the board in any way, or as a recording of the phone beside it asks.',
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
      const way = sign === '+' ? 'up' : 'down'
      return {
        id: `face${sign}${axis}`,
        name: `${axis} ${way}`,
        instruction: `Set the board so that its ${axis} axis, as the data sheet draws it, points ${way}. Let go of it.`,
        seconds: 2,
      }
    }),
  )
}

function turns(): BenchStep[] {
  return AXES.map((axis): BenchStep => {
    return {
      id: `turn-${axis}`,
      name: `Turn about ${axis}`,
      instruction: `Hold the board with its ${axis} axis level. Turn it once all the way round that axis in about five seconds, either way, and rest.`,
      seconds: 7,
    }
  })
}

/** The whole routine, in order; about a minute of logging. */
export const BENCH_STEPS: readonly BenchStep[] = [
  {
    id: 'still',
    name: 'Lie still',
    instruction: 'Lay the board on the table and touch neither. Nothing else may move the table.',
    seconds: 10,
  },
  ...faces(),
  ...turns(),
  {
    id: 'shake',
    name: 'One firm shake',
    instruction:
      'Hold the board firmly and shake it to and fro along all its axes, as hard as the prop will be moved.',
    seconds: 3,
  },
]

export function benchStep(id: StepId): BenchStep {
  return BENCH_STEPS.find((step) => step.id === id) ?? FREE_STEP
}
