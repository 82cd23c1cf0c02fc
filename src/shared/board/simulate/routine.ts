import { HandMotion } from '../../demo/hand-motion'
import {
  type HandState,
  type SensedMotion,
  type SensorPlace,
  senseMotion,
} from '../../demo/rigid-body'
import type { Step, Wave } from '../../demo/stroke'
import { Tremor } from '../../demo/tremor'
import type { Random } from '../../statistics/random'
import { BENCH_STEPS, type StepId } from '../check/steps'

/** One step of the routine as a motion of the board. */
export interface SimulatedStep {
  step: StepId
  seconds: number
  at(timeS: number): SensedMotion
}

const QUARTER = Math.PI / 2

/** Pitch and roll of each pose, rad: Rx(pitch) · Ry(roll) leads the named axis up or down. */
const POSES: Partial<Record<StepId, [pitch: number, roll: number]>> = {
  still: [0, 0],
  'face+x': [0, -QUARTER],
  'face-x': [0, QUARTER],
  'face+y': [QUARTER, 0],
  'face-y': [-QUARTER, 0],
  'face+z': [0, 0],
  'face-z': [0, 2 * QUARTER],
}

/** Angle that turns the board about each of its axes, with that axis level. */
const TURNS: Partial<Record<StepId, { axis: 'pitch' | 'roll'; roll: number }>> = {
  'turn-x': { axis: 'pitch', roll: 0 },
  'turn-y': { axis: 'roll', roll: 0 },
  // With the board rolled by a quarter its z axis lies along the pitch axis.
  'turn-z': { axis: 'pitch', roll: QUARTER },
}

/**
 * Somebody at a bench: faces set by hand against a block, off by some degrees; turns that are never
 * quite once round; a shake along all axes.
 */
export function drawRoutine(random: Random): SimulatedStep[] {
  const leverM: [number, number, number] = [
    random.uniform(-0.02, 0.02),
    random.uniform(-0.02, 0.02),
    random.uniform(-0.01, 0.01),
  ]
  return BENCH_STEPS.map(({ id, seconds }) => {
    const draw = id === 'shake' ? drawShake : TURNS[id] ? drawTurn : drawPose
    const stateAt = draw(id, random)
    const tilt = id === 'still' ? 1.5 : 4
    const grip = {
      rollDeg: tilt * random.uniform(-1, 1),
      tiltDeg: tilt * random.uniform(-1, 1),
      skewDeg: tilt * random.uniform(-1, 1),
    }
    const place: SensorPlace = { grip, leverM }
    return { step: id, seconds, at: (timeS) => senseMotion(stateAt(timeS), place) }
  })
}

function drawPose(id: StepId): (timeS: number) => HandState {
  const [pitch, roll] = POSES[id] ?? [0, 0]
  const hand = new HandMotion((pitch * 180) / Math.PI, null)
  hand.add([{ kind: 'step', axis: 'roll', startS: -2, durationS: 1, amount: roll }])
  return (timeS) => hand.at(timeS)
}

function drawTurn(id: StepId, random: Random): (timeS: number) => HandState {
  const { axis, roll } = TURNS[id]!
  const hand = new HandMotion(0, new Tremor(random.uniform(0.3, 1), random))
  const way = random.next() < 0.5 ? -1 : 1
  const durationS = random.uniform(3.8, 5.4)
  const turn: Step = {
    kind: 'step',
    axis,
    startS: random.uniform(0.6, 1),
    durationS,
    amount: way * 2 * Math.PI * random.uniform(0.92, 1.08),
  }
  hand.add([{ kind: 'step', axis: 'roll', startS: -2, durationS: 1, amount: roll }, turn])
  return (timeS) => hand.at(timeS)
}

function drawShake(_id: StepId, random: Random): (timeS: number) => HandState {
  const hand = new HandMotion(0, new Tremor(random.uniform(0.3, 1), random))
  const wave = (axis: Wave['axis'], peak: number, frequencyHz: number): Wave => ({
    kind: 'wave',
    axis,
    startS: 0.3,
    durationS: 2.3,
    amount: peak / (2 * Math.PI * frequencyHz) ** 2,
    frequencyHz,
    phase: random.uniform(0, 2 * Math.PI),
    fade: 0.3,
  })
  const g = 9.80665
  for (const axis of ['x', 'y', 'z'] as const) {
    hand.add([wave(axis, random.uniform(1.3, 2) * g, random.uniform(3, 4.5))])
  }
  for (const axis of ['yaw', 'pitch', 'roll'] as const) {
    const frequencyHz = random.uniform(3, 4.5)
    const dps = random.uniform(120, 250)
    hand.add([wave(axis, (dps * Math.PI * 2 * Math.PI * frequencyHz) / 180, frequencyHz)])
  }
  return (timeS) => hand.at(timeS)
}
