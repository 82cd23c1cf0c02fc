import { DEMO_MOVEMENTS, type DemoMovement } from '../../../shared/demo/movements'
import type { Displacement } from '../../../shared/demo/phrase'
import type { Random } from '../../../shared/statistics/random'
import { shuffled } from '../../../shared/statistics/shuffled'

/** One way out and back again. */
export interface Way {
  by: Displacement
  durationS: number
}

/**
 * A way whose turns are drawn: a lift with a nod, a side step with a turn, or a reach with a tilt, of
 * drawn sizes and direction.
 */
export function drawWay(random: Random): Way {
  const sign = random.next() < 0.5 ? -1 : 1
  const kinds: Displacement[] = [
    { z: 0.25 * sign * random.uniform(0.8, 1.3), pitch: 35 * sign * random.uniform(0.8, 1.3) },
    { x: 0.25 * sign * random.uniform(0.8, 1.3), yaw: -55 * sign * random.uniform(0.8, 1.3) },
    { y: 0.2 * sign * random.uniform(0.8, 1.3), pitch: -40 * sign * random.uniform(0.8, 1.3) },
  ]
  return { by: kinds[random.integer(kinds.length)]!, durationS: random.uniform(0.8, 1.1) }
}

export function wayMovement(id: string, { by, durationS }: Way): DemoMovement {
  return {
    id,
    name: id,
    note: '',
    write(phrase) {
      const out = phrase.outS(durationS)
      phrase.go(0, out, by)
      phrase.goBack(0.8 * out, durationS - out)
    },
  }
}

/** One way, a halt, and another way: the first may be cut out by itself. */
export function twoWays(id: string, first: Way, second: Way, haltS: number): DemoMovement {
  return {
    id,
    name: id,
    note: '',
    write(phrase) {
      let from = 0
      for (const { by, durationS } of [first, second]) {
        const out = phrase.outS(durationS)
        phrase.go(from, out, by)
        phrase.goBack(from + 0.8 * out, durationS - out)
        from += durationS + haltS
      }
    },
  }
}

/** A turn about the vertical and back: gravity stays where it is, so an accelerometer hardly sees it. */
export function turnMovement(id: string, yawDeg: number, durationS: number): DemoMovement {
  return wayMovement(id, { by: { yaw: yawDeg }, durationS })
}

/** Movements of the parade that are no way out and back of the drawn kinds. */
const BYSTANDERS = ['ring', 'knock', 'twist']

export function bystanders(random: Random, count: number): DemoMovement[] {
  const known = DEMO_MOVEMENTS.filter(({ id }) => BYSTANDERS.includes(id))
  return shuffled(known, random).slice(0, count)
}

/** Ways along each axis without any turn: a gyroscope has nothing to add. */
export function shiftWays(random: Random): Way[] {
  const axes = ['x', 'y', 'z'] as const
  return axes.map((axis) => ({
    by: { [axis]: random.uniform(0.3, 0.45) * (random.next() < 0.5 ? -1 : 1) },
    durationS: random.uniform(0.7, 0.9),
  }))
}

/** The parade's movements but Bow, which turns as Pour does and differs from it in speed. */
export function unlikeMovements(random: Random, count: number): DemoMovement[] {
  const known = DEMO_MOVEMENTS.filter(({ id }) => id !== 'bow')
  return shuffled(known, random).slice(0, count)
}
