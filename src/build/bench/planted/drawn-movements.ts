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

/** The same way slower (above 1) or larger (above 1). */
export function wayMovement(
  id: string,
  { by, durationS }: Way,
  { slower = 1, larger = 1 }: { slower?: number; larger?: number } = {},
): DemoMovement {
  const scaled = Object.fromEntries(
    Object.entries(by).map(([axis, amount]) => [axis, amount * larger]),
  ) as Displacement
  const length = durationS * slower
  return {
    id,
    name: id,
    note: '',
    write(phrase) {
      const out = phrase.outS(length)
      phrase.go(0, out, scaled)
      phrase.goBack(0.8 * out, length - out)
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

/** Movements of the parade that everybody begins towards the same side and that tilt or jerk. */
const TILTING = ['raise', 'swing', 'ring', 'knock', 'bow']

export function tiltingMovements(random: Random, count: number): DemoMovement[] {
  const known = DEMO_MOVEMENTS.filter(({ id }) => TILTING.includes(id))
  return shuffled(known, random).slice(0, count)
}

/** The parade's movements but Bow, which turns as Pour does and differs from it in speed. */
export function unlikeMovements(random: Random, count: number): DemoMovement[] {
  const known = DEMO_MOVEMENTS.filter(({ id }) => id !== 'bow')
  return shuffled(known, random).slice(0, count)
}
