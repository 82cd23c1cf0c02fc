import type { AdviceKind } from '../../../shared/decide/gesture-decision'
import type { SensorAdviceKind } from '../../../shared/decide/sensor-advice'
import type { FullLibrary } from '../../../shared/model/library'
import { createRandom, type Random } from '../../../shared/statistics/random'
import {
  bystanders,
  drawWay,
  shiftWays,
  turnMovement,
  twoWays,
  unlikeMovements,
  wayMovement,
} from './drawn-movements'
import { type PlantedOptions, plantedLibrary } from './planted-library'

export type Advised = Exclude<AdviceKind, 'alike'> | SensorAdviceKind

/** A kind of library in which one thing is to be found. */
export interface PlantedKind {
  expected: Advised
  draw(random: Random): PlantedOptions
}

const TESTERS = 4
const TAKES = 6

/** What is planted is drawn anew for each library: which way, how fast, how large, how far turned. */
export const PLANTED: readonly PlantedKind[] = [
  {
    expected: 'speed',
    draw: (random) => {
      const way = drawWay(random)
      const slower = random.uniform(1.9, 2.5)
      return usual(random, [
        { movement: wayMovement('a', way) },
        { movement: wayMovement('b', way), slower },
      ])
    },
  },
  {
    expected: 'size',
    draw: (random) => {
      const way = drawWay(random)
      const larger = random.uniform(2.4, 3)
      return usual(random, [
        { movement: wayMovement('a', way), larger: 0.5 },
        { movement: wayMovement('b', way), larger: 0.5 * larger },
      ])
    },
  },
  {
    expected: 'roll',
    draw: (random) => {
      const way = drawWay(random)
      const rollDeg = random.uniform(110, 180)
      return usual(random, [
        { movement: wayMovement('a', way) },
        { movement: wayMovement('b', way), rollDeg },
      ])
    },
  },
  {
    expected: 'part',
    draw: (random) => {
      const [first, second] = [drawWay(random), drawWay(random)]
      const whole = twoWays('b', first, second, random.uniform(0.6, 1.1))
      return usual(random, [{ movement: wayMovement('a', first) }, { movement: whole }])
    },
  },
  { expected: 'gyro', draw: drawTurns },
  // A loss is judged over testers: with four of them one who loses nothing leaves it open.
  {
    expected: 'gyro-needed',
    draw: (random) => ({ ...drawTurns(random), testers: 8, takes: 3 }),
  },
  { expected: 'gyro-spare', draw: (random) => drawShifts(random, 12, 16) },
  {
    expected: 'range-clips',
    draw: (random) => ({
      gestures: [
        ...bystanders(random, 2).map((movement) => ({ movement })),
        {
          movement: wayMovement('a', {
            by: { z: random.uniform(0.4, 0.6), pitch: 30 },
            durationS: 0.6,
          }),
        },
      ],
      testers: TESTERS,
      takes: TAKES,
      target: { accel: { fullScale: 2, nanoPerLsb: 61_000 } },
    }),
  },
]

/** Left and right turns about the vertical, the sensor near the grip: rotation alone tells them. */
function drawTurns(random: Random): PlantedOptions {
  const [yaw, durationS] = [random.uniform(50, 80), random.uniform(1.1, 1.5)]
  const gestures = [
    { movement: turnMovement('a', yaw, durationS) },
    { movement: turnMovement('b', -yaw, durationS) },
  ]
  return { ...usual(random, gestures), leverM: [0, 0.004, 0] }
}

function usual(random: Random, gestures: PlantedOptions['gestures']): PlantedOptions {
  const others = bystanders(random, 1).map((movement) => ({ movement }))
  return { gestures: [...gestures, ...others], testers: TESTERS, takes: TAKES }
}

/** A library in which the pair or the sensor has something to be found. */
export function plantedCase(kind: PlantedKind, seed: number): FullLibrary {
  const random = createRandom(seed)
  return plantedLibrary(random, kind.draw(random))
}

/** A kind of library in which some advice would be false. */
export interface ControlKind {
  /** What must not be said; every advice on pairs, and that the range clips, never may. */
  silent: readonly SensorAdviceKind[]
  draw(random: Random): PlantedOptions
}

/**
 * Movements that differ in everything: whether they need a gyroscope is not known. Movements without a
 * turn: a gyroscope adds nothing. Turns that it alone shows: there it is not spare.
 */
const CONTROLS: readonly ControlKind[] = [
  {
    silent: [],
    draw: (random) => ({
      gestures: unlikeMovements(random, 4).map((movement) => ({ movement })),
      testers: TESTERS,
      takes: TAKES,
    }),
  },
  { silent: ['gyro-needed'], draw: (random) => drawShifts(random, TESTERS, TAKES) },
  { silent: ['gyro-spare'], draw: drawTurns },
]
const ORDER = [0, 0, 1, 0, 2]

/** Three of five libraries of the first kind, one of each other. */
export function controlKind(index: number): ControlKind {
  return CONTROLS[ORDER[index % ORDER.length]!]!
}

export function controlCase({ draw }: ControlKind, seed: number): FullLibrary {
  const random = createRandom(seed)
  return plantedLibrary(random, draw(random))
}

function drawShifts(random: Random, testers: number, takes: number): PlantedOptions {
  const gestures = shiftWays(random).map((way, i) => ({ movement: wayMovement(`shift${i}`, way) }))
  return { gestures, testers, takes }
}
