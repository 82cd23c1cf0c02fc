import { createRandom, type Random } from '../statistics/random'
import { HAND_AXES, type HandAxis, lastEndS, type Stroke } from './stroke'
import type { TesterStyle } from './tester-style'

/** Displacements by axis: m for x y z, degrees for yaw pitch roll. */
export type Displacement = Partial<Record<HandAxis, number>>

const DEGREE = Math.PI / 180

function radiansOrMetres(axis: HandAxis, amount: number): number {
  return axis === 'yaw' || axis === 'pitch' || axis === 'roll' ? amount * DEGREE : amount
}

/** Share of performances that are careless, and how much more they vary and fall short. */
const CARELESS_SHARE = 0.08
const CARELESS_VARIATION = 1.8
const CARELESS_SIZE = 0.85

/** What a tester always does differently from others in one movement, for one axis. */
interface Manner {
  /** Factor on displacements. */
  size: number
  /** Lag behind the other axes, nominal s. */
  lagS: number
}

/** Standard deviations of the above between testers. */
const MANNER_SIZE = 0.16
const MANNER_LAG_S = 0.022

function mannerOf(name: string, seed: number): Record<HandAxis, Manner> {
  let mixed = seed
  for (const letter of name) mixed = Math.imul(mixed, 31) + letter.charCodeAt(0)
  const random = createRandom(mixed)
  const entries = HAND_AXES.map((axis) => {
    const [a, b] = [random.normal(), random.normal()].map((n) => Math.max(-2, Math.min(2, n)))
    return [axis, { size: Math.exp(MANNER_SIZE * (a ?? 0)), lagS: MANNER_LAG_S * (b ?? 0) }]
  })
  return Object.fromEntries(entries) as Record<HandAxis, Manner>
}

/**
 * Writes one performance down as strokes. Nominal times and displacements, those of the average
 * tester, are bent by the tester's style and by this take's own chance.
 */
export class Phrase {
  readonly strokes: Stroke[] = []
  readonly #style: TesterStyle
  readonly #random: Random
  readonly #tempo: number
  readonly #size: number
  readonly #variation: number
  readonly #manner: Record<HandAxis, Manner>

  /** @param name of what is performed: a tester has a manner of their own for each. */
  constructor(name: string, style: TesterStyle, random: Random) {
    this.#style = style
    this.#manner = mannerOf(name, style.manner)
    this.#random = random
    const careless = random.next() < CARELESS_SHARE
    this.#variation = style.variation * (careless ? CARELESS_VARIATION : 1)
    this.#tempo = style.speed * this.#chance(0.08)
    this.#size = style.size * this.#chance(0.09) * (careless ? CARELESS_SIZE : 1)
  }

  /** Moves smoothly by the displacement and stays there. Times in nominal seconds. */
  go(atS: number, durationS: number, by: Displacement): void {
    const startS = this.#start(atS)
    const length = (durationS / this.#tempo) * this.#chance(0.05)
    const whole = this.#chance(0.07)
    for (const [axis, amount] of this.#styled(by)) {
      this.strokes.push({
        kind: 'step',
        axis,
        startS: this.#lagged(axis, startS),
        durationS: length * this.#chance(0.04),
        amount: amount * whole * this.#chance(0.09),
      })
    }
  }

  /** Moves by exactly this, whatever the tester's manner, as to a place that the table gives. */
  place(atS: number, durationS: number, by: Displacement): void {
    const startS = this.#start(atS)
    for (const axis of HAND_AXES) {
      const amount = by[axis]
      if (amount === undefined) continue
      this.#step(axis, startS, durationS / this.#tempo, radiansOrMetres(axis, amount))
    }
  }

  /** Goes back to the held pose from wherever the steps have led. */
  goBack(atS: number, durationS: number): void {
    const startS = this.#start(atS)
    const length = (durationS / this.#tempo) * this.#chance(0.05)
    for (const axis of HAND_AXES) {
      const left = this.#left(axis)
      if (left === 0) continue
      const start = this.#lagged(axis, startS)
      const overshoot = left * this.#style.followThrough * this.#chance(0.2)
      this.#step(axis, start, length, -left - overshoot)
      this.#step(axis, start + 0.75 * length, 0.3 / this.#tempo, overshoot)
    }
  }

  /** Swings about the pose: `cycles` within the duration, both fades included. */
  oscillate(
    atS: number,
    durationS: number,
    by: Displacement,
    cycles: number,
    phase = 0,
    fade = 0.3,
  ): void {
    const startS = this.#start(atS)
    const length = (durationS / this.#tempo) * this.#chance(0.05)
    const turn = phase + 0.25 * this.#variation * this.#random.normal()
    for (const [axis, amount] of this.#styled(by)) {
      this.strokes.push({
        kind: 'wave',
        axis,
        startS: this.#lagged(axis, startS),
        durationS: length,
        amount: amount * this.#chance(0.1),
        frequencyHz: cycles / length,
        phase: turn,
        fade,
      })
    }
  }

  /** Hard stop felt through the handle: a short burst that tempo and size do not change. */
  shock(atS: number, axis: HandAxis, accelMps2: number, frequencyHz: number): void {
    const angularRate = 2 * Math.PI * frequencyHz
    this.strokes.push({
      kind: 'wave',
      axis,
      startS: this.#start(atS),
      durationS: 2 / frequencyHz,
      amount: (accelMps2 / (angularRate * angularRate)) * this.#chance(0.25),
      frequencyHz,
      phase: this.#random.uniform(0, Math.PI),
      fade: 0.4,
    })
  }

  /** Strokes mirrored for a left hand; the lateral axes are x, yaw and roll. */
  finish(): Stroke[] {
    return mirroredFor(this.#style.hand, this.strokes)
  }

  endS(): number {
    return lastEndS(this.strokes)
  }

  /** Counter-movement of the tester's own size before a movement by `by`. */
  windUp(durationS: number, by: Displacement): void {
    const share = -this.#style.windUp
    const counter: Displacement = {}
    for (const axis of HAND_AXES) if (by[axis] !== undefined) counter[axis] = share * by[axis]
    if (share !== 0) this.go(0, durationS, counter)
  }

  /** 1, or -1 for who begins lateral movements towards the other side. */
  side(): 1 | -1 {
    return this.#style.turnsInward ? -1 : 1
  }

  /** Time spent on the way out when both ways together take `bothS`. */
  outS(bothS: number): number {
    return bothS * this.#style.outShare
  }

  #chance(sd: number): number {
    return Math.exp(sd * this.#variation * Math.max(-2.5, Math.min(2.5, this.#random.normal())))
  }

  #start(atS: number): number {
    return atS / this.#tempo
  }

  /** Start of an axis: the tester's own lag and this take's. */
  #lagged(axis: HandAxis, startS: number): number {
    const chanceS = 0.012 * this.#variation * this.#random.normal()
    return Math.max(0, startS + this.#manner[axis].lagS / this.#tempo + chanceS)
  }

  #step(axis: HandAxis, startS: number, durationS: number, amount: number): void {
    this.strokes.push({ kind: 'step', axis, startS, durationS, amount })
  }

  /** What the steps of an axis have added up to, m or rad. */
  #left(axis: HandAxis): number {
    let sum = 0
    for (const stroke of this.strokes) {
      if (stroke.kind === 'step' && stroke.axis === axis) sum += stroke.amount
    }
    return sum
  }

  /** Size, wrist, heading and leaks of the tester, in m and rad. */
  #styled(by: Displacement): [HandAxis, number][] {
    const { wrist, headingDeg, leak } = this.#style
    const [c, s] = [Math.cos(headingDeg * DEGREE), Math.sin(headingDeg * DEGREE)]
    const { x = 0, y = 0, z = 0, yaw = 0, pitch = 0, roll = 0 } = by
    const bent: Record<HandAxis, number> = {
      x: c * x - s * y,
      y: s * x + c * y,
      z,
      yaw: wrist * (yaw + leak[0] * pitch),
      pitch: wrist * (pitch + leak[2] * roll),
      roll: wrist * (roll + leak[1] * yaw),
    }
    return HAND_AXES.filter((axis) => bent[axis] !== 0).map((axis) => [
      axis,
      radiansOrMetres(axis, this.#size * this.#manner[axis].size * bent[axis]),
    ])
  }
}

/** Lateral strokes change sign for a left hand. */
export function mirroredFor(hand: TesterStyle['hand'], strokes: readonly Stroke[]): Stroke[] {
  if (hand === 'right') return [...strokes]
  return strokes.map((stroke) =>
    stroke.axis === 'x' || stroke.axis === 'yaw' || stroke.axis === 'roll'
      ? { ...stroke, amount: -stroke.amount }
      : stroke,
  )
}
