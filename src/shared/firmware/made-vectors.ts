import type { RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import { isHit, type Observation } from './observations'
import { refusedVectors } from './refused-vectors'
import type { VectorInput, VectorStep } from './vector'

const LOWEST = -32768
const HIGHEST = 32767

/** Samples of rest that make gravity known to any model: 2^8 is its longest average. */
const REST_SAMPLES = 256

/** Vectors made for what a library does not hold: extremes of numbers, lengths and grips. */
export function madeVectors(model: RecogniserModel, all: Observation[]): VectorInput[] {
  const hit = all.find(isHit)
  return [
    ...refusedVectors(model),
    ...extremeVectors(model),
    ...(hit && !model.button ? gripVectors(model, hit) : []),
    ...(hit && !model.button ? [clippedVector(hit)] : []),
  ]
}

function extremeVectors(model: RecogniserModel): VectorInput[] {
  const { minLength, maxLength, offHold, onHold } = model.segmenter
  const rest: VectorStep = { samples: still(REST_SAMPLES, gravityAlong(model, 1)) }
  const tail: VectorStep = { samples: still(offHold + 160, gravityAlong(model, 1)) }
  const moved = (name: string, why: string, from: string, samples: Int16Array): VectorInput => ({
    name,
    why,
    from: `rest with gravity along a cross axis, ${from}, rest`,
    steps: model.button
      ? [rest, { button: true }, { samples }, { button: false }, tail]
      : [rest, { samples }, tail],
  })
  return [
    {
      name: 'still',
      why: 'Nothing moves: no event.',
      from: 'one reading of gravity, repeated',
      steps: [rest, rest],
    },
    moved(
      'twitch',
      'A twitch: too short, or no movement at all.',
      'two samples or so of shaking',
      shaking(onHold + 1, 12000),
    ),
    moved(
      'just-long-enough',
      'About as short as a movement may be.',
      'shaking as long as min_length',
      shaking(minLength, 9000),
    ),
    moved(
      'too-long',
      'A movement that does not end.',
      'shaking beyond max_length',
      shaking(maxLength + 20, 9000),
    ),
    moved(
      'extremes',
      'Every reading at an end of int16, in turn.',
      '-32768 and 32767 in turn',
      extremes(maxLength >> 1),
    ),
    moved(
      'lowest',
      'All readings at the lowest count.',
      '-32768 on all axes',
      filled(maxLength >> 1, LOWEST),
    ),
  ]
}

/** A recognised movement after rest with the long axis vertical, and with no rest before it. */
function gripVectors(model: RecogniserModel, hit: Observation): VectorInput[] {
  const event = hit.events[0]
  const counts = joined(hit.steps)
  if (!event) return []
  const movement = counts.subarray(event.start * AXES)
  return [
    {
      name: 'vertical',
      why: 'Rest with the long axis upright: roll cannot be known and is left.',
      from: `rest with gravity along the long axis, then the movement of ${hit.from}`,
      steps: [{ samples: still(REST_SAMPLES, gravityAlong(model, 0)) }, { samples: movement }],
    },
    {
      name: 'no-rest',
      why: 'Moving from the first sample on: gravity before the movement is not known.',
      from: `shaking, then the movement of ${hit.from}`,
      steps: [{ samples: shaking(24, 9000) }, { samples: movement }],
    },
  ]
}

/** The movement eight times as strong: most readings stand at the ends of the range. */
function clippedVector(hit: Observation): VectorInput {
  const samples = joined(hit.steps).map((count) => Math.max(LOWEST, Math.min(HIGHEST, count * 8)))
  return {
    name: 'clipped',
    why: 'A movement far beyond the range of the sensor.',
    from: `${hit.from}, each value eight times, within int16`,
    steps: [{ samples }],
  }
}

/** One g along the long axis (offset 0) or the first cross axis (1), in counts. */
function gravityAlong(model: RecogniserModel, offset: 0 | 1): [number, number, number] {
  const gravity: [number, number, number] = [0, 0, 0]
  gravity[(model.longAxis + offset) % 3] = Math.min(
    HIGHEST,
    Math.round(1e9 / model.board.accelNgPerLsb),
  )
  return gravity
}

function still(count: number, gravity: [number, number, number]): Int16Array {
  return Int16Array.from({ length: count * AXES }, (_, at) => gravity[at % AXES] ?? 0)
}

/** All axes back and forth with a period of eight samples. */
function shaking(count: number, size: number): Int16Array {
  const wave = [0, 0.7, 1, 0.7, 0, -0.7, -1, -0.7]
  return Int16Array.from({ length: count * AXES }, (_, at) => {
    const phase = Math.floor(at / AXES) + (at % AXES)
    return Math.round(size * (wave[phase % 8] ?? 0))
  })
}

function extremes(count: number): Int16Array {
  return Int16Array.from({ length: count * AXES }, (_, at) =>
    (Math.floor(at / AXES) + at) % 2 === 0 ? LOWEST : HIGHEST,
  )
}

function filled(count: number, value: number): Int16Array {
  return new Int16Array(count * AXES).fill(value)
}

function joined(steps: VectorStep[]): Int16Array {
  const blocks = steps.flatMap((step) => ('samples' in step ? [step.samples] : []))
  const all = new Int16Array(blocks.reduce((sum, block) => sum + block.length, 0))
  let at = 0
  for (const block of blocks) {
    all.set(block, at)
    at += block.length
  }
  return all
}
