import type { SampleBlock } from '../model/sample'
import type { Random } from '../statistics/random'
import { drawActivities } from './background'
import { HandMotion } from './hand-motion'
import { type DemoMovement, performMovement } from './movements'
import { PHONE_RATE_HZ, PhoneRecorder, type PhoneSensor } from './phone-sensor'
import { lanternIn } from './prop'
import { type SensorPlace, senseMotion } from './rigid-body'
import { lastEndS, shifted } from './stroke'
import type { TesterStyle } from './tester-style'
import { Tremor } from './tremor'

/** A tester with their phone; `place` may be changed to hold the prop in another way. */
export interface DemoTester {
  style: TesterStyle
  sensor: PhoneSensor
  place: SensorPlace
}

export function demoTester(style: TesterStyle, sensor: PhoneSensor): DemoTester {
  return { style, sensor, place: lanternIn(style) }
}

/** A hand at rest in the tester's own manner; pitch and tremor differ a little each time. */
export function restingHand(style: TesterStyle, random: Random): HandMotion {
  const pitchDeg = style.heldPitchDeg + 3 * style.variation * random.normal()
  return new HandMotion(pitchDeg, new Tremor(style.tremor * random.uniform(0.8, 1.25), random))
}

/** The grip is never quite the same twice. */
function regripped(tester: DemoTester, random: Random): SensorPlace {
  const { grip, leverM } = tester.place
  const sd = 2.5 * tester.style.variation
  return {
    grip: {
      rollDeg: grip.rollDeg + sd * random.normal(),
      tiltDeg: grip.tiltDeg + 0.5 * sd * random.normal(),
      skewDeg: grip.skewDeg + 0.5 * sd * random.normal(),
    },
    leverM,
  }
}

function record(
  hand: HandMotion,
  durationS: number,
  place: SensorPlace,
  sensor: PhoneSensor,
  random: Random,
): SampleBlock {
  const recorder = new PhoneRecorder(sensor, random)
  const count = Math.floor(durationS * PHONE_RATE_HZ)
  for (let index = 0; index < count; index++) {
    const timeS = index / PHONE_RATE_HZ
    recorder.take(timeS, senseMotion(hand.at(timeS), place))
  }
  return recorder.finish()
}

/** One take: rest, the movement, rest. */
export function recordTake(
  tester: DemoTester,
  movement: DemoMovement,
  random: Random,
): SampleBlock {
  const hand = restingHand(tester.style, random)
  const restS = random.uniform(0.8, 1.2)
  const strokes = shifted(performMovement(movement, tester.style, random), restS)
  hand.add(strokes)
  const durationS = lastEndS(strokes) + random.uniform(0.8, 1.2)
  return record(hand, durationS, regripped(tester, random), tester.sensor, random)
}

/** Everything that is no gesture, at least as long as asked for. */
export function recordBackground(
  tester: DemoTester,
  minimumS: number,
  random: Random,
): SampleBlock {
  const hand = restingHand(tester.style, random)
  let endS = 1
  for (const { strokes, durationS, laidDown } of drawActivities(tester.style, random)) {
    hand.add(shifted(strokes, endS))
    if (laidDown) hand.release(endS + laidDown.startS, endS + laidDown.endS)
    endS += durationS
    if (endS >= minimumS) break
  }
  return record(hand, endS, regripped(tester, random), tester.sensor, random)
}
