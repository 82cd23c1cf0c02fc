import type { Random } from '../statistics/random'
import { DEMO } from '../words/en/demo'
import { Phrase } from './phrase'
import type { Stroke } from './stroke'
import type { TesterStyle } from './tester-style'

/** A movement of the night parade's hand lanterns. */
export interface DemoMovement {
  id: string
  name: string
  /** What the carrier does, in one sentence. */
  note: string
  /** Nominal course in the average tester's seconds, metres and degrees. */
  write(phrase: Phrase): void
}

/**
 * The movements. Nominal figures are those of a right hand; all return to the held pose, and each
 * is one continuous movement without a halt inside.
 */
export const DEMO_MOVEMENTS: readonly DemoMovement[] = [
  {
    id: 'raise',
    ...DEMO.movements.raise,
    write(phrase) {
      phrase.windUp(0.3, { z: 0.36, pitch: 34 })
      const out = phrase.outS(1.15)
      phrase.go(0.15, out, { z: 0.36, y: 0.05 })
      // The wrist follows the arm a little later.
      phrase.go(0.15 + 0.1 * out, 0.88 * out, { pitch: 34 })
      phrase.goBack(0.15 + 0.8 * out, 1.15 - out)
    },
  },
  {
    id: 'swing',
    ...DEMO.movements.swing,
    write(phrase) {
      phrase.oscillate(0, 1.6, { pitch: 36, y: 0.1, x: 0.02 }, 2.6)
      phrase.oscillate(0.1, 1.4, { z: 0.014 }, 4.6)
    },
  },
  {
    id: 'ring',
    ...DEMO.movements.ring,
    write(phrase) {
      phrase.oscillate(0, 1.15, { pitch: 12, yaw: 5, y: -0.004 }, 5.4)
    },
  },
  {
    id: 'sweep',
    ...DEMO.movements.sweep,
    write(phrase) {
      const out = phrase.outS(1.3)
      const side = phrase.side()
      phrase.go(0, 0.42, { x: -0.13 * side, yaw: 28 * side })
      phrase.go(0.26, out, { x: 0.46 * side, y: -0.06, yaw: -100 * side, roll: 8 * side })
      phrase.goBack(0.26 + 0.8 * out, 1.3 - out)
    },
  },
  {
    id: 'pour',
    ...DEMO.movements.pour,
    write(phrase) {
      const out = phrase.outS(1.7)
      phrase.go(0, out, { pitch: -62, roll: -24 * phrase.side(), z: 0.02 })
      phrase.goBack(0.78 * out, 1.7 - out)
    },
  },
  {
    id: 'knock',
    ...DEMO.movements.knock,
    write(phrase) {
      phrase.windUp(0.14, { pitch: -60, y: 0.06 })
      for (const at of [0.08, 0.36]) {
        phrase.go(at, 0.14, { pitch: -20, y: 0.03, z: -0.03 })
        phrase.shock(at + 0.1, 'y', 6, 16)
        if (at < 0.3) phrase.go(at + 0.12, 0.17, { pitch: 20, y: -0.03, z: 0.03 })
        else phrase.goBack(at + 0.12, 0.2)
      }
    },
  },
  {
    id: 'twist',
    ...DEMO.movements.twist,
    write(phrase) {
      const by = { roll: 92 * phrase.side(), x: 0.015 * phrase.side() }
      phrase.windUp(0.18, by)
      const out = phrase.outS(0.9)
      phrase.go(0.1, out, by)
      phrase.goBack(0.1 + 0.8 * out, 0.9 - out)
    },
  },
  {
    id: 'bow',
    ...DEMO.movements.bow,
    write(phrase) {
      const by = { pitch: -50, y: 0.07, z: -0.11, roll: -5 * phrase.side() }
      phrase.windUp(0.2, by)
      const out = phrase.outS(1)
      phrase.go(0.1, out, by)
      phrase.goBack(0.1 + 0.78 * out, 1 - out)
    },
  },
]

export function demoMovement(id: string): DemoMovement | undefined {
  return DEMO_MOVEMENTS.find((movement) => movement.id === id)
}

/** One performance by a tester, starting at 0 s; every call with the same random goes its own way. */
export function performMovement(
  movement: DemoMovement,
  style: TesterStyle,
  random: Random,
): Stroke[] {
  const phrase = new Phrase(movement.id, style, random)
  movement.write(phrase)
  return phrase.finish()
}
