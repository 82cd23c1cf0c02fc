import type { Random } from '../statistics/random'
import { type Displacement, Phrase } from './phrase'
import type { Stroke } from './stroke'
import type { TesterStyle } from './tester-style'

/** A stretch of everyday handling, from 0 s on. */
export interface Activity {
  strokes: Stroke[]
  durationS: number
  /** When the prop lies on its own, s; null when it stays in the hand. */
  laidDown: { startS: number; endS: number } | null
}

type Writer = (
  phrase: Phrase,
  random: Random,
  style: TesterStyle,
) => Pick<Activity, 'durationS' | 'laidDown'>

const inHand = (durationS: number) => ({ durationS, laidDown: null })

const stand: Writer = (phrase, random) => {
  phrase.go(0.5, random.uniform(0.8, 1.6), { z: random.uniform(-0.04, 0.04), pitch: 4 })
  return inHand(random.uniform(3, 7))
}

/** Two steps a second or a little less: bounce at the step rate, sway at half of it. */
const walk: Writer = (phrase, random) => {
  const durationS = random.uniform(12, 22)
  const steps = durationS * random.uniform(1.75, 2.05)
  const fade = 1.2 / durationS
  const phase = random.uniform(0, 2 * Math.PI)
  const bounce = random.uniform(0.012, 0.022)
  phrase.oscillate(0, durationS, { z: bounce, pitch: random.uniform(2, 5) }, steps, phase, fade)
  phrase.oscillate(0, durationS, { z: bounce / 6, y: 0.003 }, 2 * steps, phase + 1, fade)
  const half = { x: random.uniform(0.008, 0.02), yaw: random.uniform(2, 6), roll: 2 }
  phrase.oscillate(0, durationS, half, steps / 2, phase / 2, fade)
  return inHand(durationS)
}

function anywhere(random: Random, size: number): Displacement {
  const draw = (amount: number) => size * amount * random.normal()
  return {
    x: draw(0.08),
    y: draw(0.07),
    z: draw(0.08),
    yaw: draw(18),
    pitch: draw(16),
    roll: draw(20),
  }
}

/** Hands that join in the talk: strokes to and fro with pauses between them. */
const talk: Writer = (phrase, random) => {
  const lengthS = random.uniform(7, 13)
  for (let atS = 0.3; atS < lengthS; ) {
    const strokeS = random.uniform(0.3, 0.8)
    phrase.go(atS, strokeS, anywhere(random, random.uniform(0.4, 1.1)))
    atS += 0.8 * strokeS
    if (random.next() < 0.55) {
      phrase.goBack(atS, random.uniform(0.4, 0.8))
      atS += random.uniform(0.6, 2.4)
    }
  }
  phrase.goBack(lengthS + 0.6, 0.8)
  return inHand(lengthS + 2)
}

/** Down to a table, lying flat for a while, up again. */
const putDown: Writer = (phrase, random, { heldPitchDeg, grip }) => {
  const lyingS = random.uniform(4, 8)
  phrase.place(0.3, 1, {
    y: 0.18,
    z: -0.38,
    pitch: -heldPitchDeg - grip.tiltDeg,
    roll: -grip.rollDeg,
  })
  phrase.shock(1.2, 'z', random.uniform(5, 12), 18)
  phrase.goBack(1.4 + lyingS, 1.1)
  return { durationS: lyingS + 3.4, laidDown: { startS: 2, endS: 1.4 + 0.7 * lyingS } }
}

/** The whole person turns; the new direction stays. */
const turn: Writer = (phrase, random) => {
  const side = random.next() < 0.5 ? -1 : 1
  phrase.go(0.2, random.uniform(1.1, 1.9), { yaw: side * random.uniform(60, 170) })
  return inHand(3)
}

const changeHands: Writer = (phrase, random) => {
  phrase.go(0.2, 0.6, { x: -0.16, pitch: random.uniform(15, 45), roll: random.uniform(-60, 60) })
  phrase.shock(0.85, 'x', random.uniform(2, 6), 13)
  phrase.go(0.9, 0.5, { x: 0.05, yaw: random.uniform(-25, 25), z: 0.05 })
  phrase.goBack(1.6, 0.8)
  return inHand(4)
}

/** Up to the head, a quick rub, down again. */
const scratch: Writer = (phrase, random) => {
  phrase.go(0.2, 0.7, { z: 0.25, y: -0.1, pitch: 25, roll: random.uniform(-30, 30) })
  const rubS = random.uniform(0.7, 1.5)
  phrase.oscillate(0.9, rubS, { x: 0.006, roll: random.uniform(3, 7), yaw: 3 }, 4.3 * rubS)
  phrase.goBack(0.8 + rubS, 0.8)
  return inHand(rubS + 3)
}

/** A greeting to somebody in the crowd: the movement most like a gesture. */
const wave: Writer = (phrase, random) => {
  phrase.go(0.2, 0.6, { z: 0.2, pitch: 15 })
  const waveS = random.uniform(0.8, 1.6)
  phrase.oscillate(0.6, waveS, { yaw: random.uniform(14, 26), x: 0.05 }, 2.1 * waveS)
  phrase.goBack(0.5 + waveS, 0.8)
  return inHand(waveS + 3)
}

/** Lifts the lantern to look at something, stays a while, lets it sink. */
const look: Writer = (phrase, random) => {
  const stayS = random.uniform(1.2, 3)
  phrase.go(0.2, 0.7, { z: random.uniform(0.1, 0.3), roll: random.uniform(-25, 25), pitch: 12 })
  phrase.goBack(0.9 + stayS, random.uniform(0.7, 1.1))
  return inHand(stayS + 3)
}

/** What carriers do, with its weight in the draw. */
const ACTIVITIES: readonly (readonly [Writer, number])[] = [
  [walk, 3],
  [talk, 3],
  [stand, 2],
  [turn, 1.5],
  [look, 1.5],
  [changeHands, 1],
  [scratch, 1],
  [wave, 0.7],
  [putDown, 1],
]

function drawWriter(random: Random): Writer {
  const total = ACTIVITIES.reduce((sum, [, weight]) => sum + weight, 0)
  let left = random.next() * total
  for (const [writer, weight] of ACTIVITIES) {
    left -= weight
    if (left < 0) return writer
  }
  return stand
}

/** Activities without end, in the tester's own manner, never the same twice in a row. */
export function* drawActivities(style: TesterStyle, random: Random): Generator<Activity, never> {
  let last: Writer | null = null
  for (;;) {
    let writer = drawWriter(random)
    while (writer === last) writer = drawWriter(random)
    last = writer
    const phrase = new Phrase('background', style, random)
    const { durationS, laidDown } = writer(phrase, random, style)
    // A slow tester may still be moving after the nominal time.
    const wholeS = Math.max(durationS, phrase.endS() + 0.3)
    yield { strokes: phrase.finish(), durationS: wholeS, laidDown }
  }
}
