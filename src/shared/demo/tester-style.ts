import type { Hand } from '../model/library'
import type { Random } from '../statistics/random'
import type { Grip } from './rigid-body'

/** How one tester moves and holds the prop. Factors are 1 for the average tester. */
export interface TesterStyle {
  code: string
  hand: Exclude<Hand, 'unknown'>
  /** As a right hand would hold it; mirrored for a left hand like everything lateral. */
  grip: Grip
  /** Pitch of the lantern's handle when held, deg above the horizon. */
  heldPitchDeg: number
  /** Factor on tempo. */
  speed: number
  /** Factor on amplitudes. */
  size: number
  /** Factor on rotation against translation: wrist people and arm people. */
  wrist: number
  /** Share of a movement's time that goes to the way out, around 1 / 2 of both ways. */
  outShare: number
  /** Counter-movement before the main one, share of its amount. */
  windUp: number
  /** Overshoot after the main one, share of its amount. */
  followThrough: number
  /** Direction of the person's own forward plane, deg to the left. */
  headingDeg: number
  /** Rotation about each axis that leaks into the next (pitch to yaw, yaw to roll, roll to pitch). */
  leak: [number, number, number]
  /** Turns and sweeps begin towards the other side than most people's do. */
  turnsInward: boolean
  /** Picks what this tester does in their own way in each movement; any integer. */
  manner: number
  /** Factor on tremor and sway. */
  tremor: number
  /** Factor on the differences between takes. */
  variation: number
}

/** The average tester, for checks and for whoever has no style of their own. */
export const PLAIN_STYLE: TesterStyle = {
  code: 'T00',
  hand: 'right',
  grip: { rollDeg: 0, tiltDeg: 0, skewDeg: 0 },
  heldPitchDeg: 30,
  speed: 1,
  size: 1,
  wrist: 1,
  outShare: 0.5,
  windUp: 0.06,
  followThrough: 0.06,
  headingDeg: 0,
  leak: [0, 0, 0],
  turnsInward: false,
  manner: 0,
  tremor: 1,
  variation: 1,
}

/** Roll of the grip by tester, deg: most hold the screen up, two do not. */
const GRIP_ROLL_DEG = [4, -12, 38, 9, -27, 55]
/** Places, in every row of as many testers, of the left-handed and of who turns the other way. */
const LEFT_HANDED = 3
const TURNS_INWARD = 1

/** @param index place of the tester, from 0; sets code, hand and the rough roll of the grip. */
export function drawTesterStyle(index: number, random: Random): TesterStyle {
  const spread = (sd: number) => Math.exp(sd * Math.max(-2, Math.min(2, random.normal())))
  const place = index % GRIP_ROLL_DEG.length
  return {
    code: `T${String(index + 1).padStart(2, '0')}`,
    hand: place === LEFT_HANDED ? 'left' : 'right',
    grip: {
      rollDeg: (GRIP_ROLL_DEG[place] ?? 0) + random.uniform(-3, 3),
      tiltDeg: random.uniform(-8, 8),
      skewDeg: random.uniform(-8, 8),
    },
    heldPitchDeg: random.uniform(20, 42),
    speed: spread(0.13),
    size: spread(0.12),
    wrist: spread(0.12),
    outShare: random.uniform(0.42, 0.58),
    windUp: random.uniform(0, 0.12),
    followThrough: random.uniform(0, 0.16),
    headingDeg: random.uniform(-18, 18),
    leak: [random.uniform(-0.2, 0.2), random.uniform(-0.25, 0.25), random.uniform(-0.15, 0.15)],
    turnsInward: place === TURNS_INWARD,
    manner: random.nextUint32(),
    tremor: random.uniform(0.6, 1.6),
    variation: random.uniform(0.8, 1.3),
  }
}
