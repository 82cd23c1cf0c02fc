import * as v from 'valibot'
import type { DataDecision } from '../decide/data-decision'
import { NEXT_KINDS } from '../decide/data-decision'
import { ADVICE_KINDS, type GestureDecision } from '../decide/gesture-decision'
import type { SensorDecision } from '../decide/sensor-decision'
import { SWEEP_AXES } from '../decide/sensor-decision'
import { countSchema, numberOrNone, rateSchema } from './rate-schema'

const holdout = v.picklist(['tester', 'take'])
const gestures = v.array(v.object({ id: v.string(), name: v.string() }))
const testers = v.array(v.string())
const spread = v.object({
  low: numberOrNone,
  middle: numberOrNone,
  high: numberOrNone,
  n: countSchema,
})
/** A rate whose counts are means over draws. */
const meanRate = v.object({ ...rateSchema.entries, hits: v.number(), n: v.number() })

const margin = v.object({
  value: numberOrNone,
  low: numberOrNone,
  high: numberOrNone,
  n: countSchema,
})

const pair = v.object({
  first: countSchema,
  second: countSchema,
  told: v.object({
    recogniser: v.nullable(rateSchema),
    shape: v.nullable(rateSchema),
    accelerometer: v.nullable(rateSchema),
    unaligned: v.nullable(rateSchema),
  }),
  margin,
  courseMargin: margin,
  turningDps: v.number(),
  byDuration: rateSchema,
  bySize: rateSchema,
  byTurn: rateSchema,
  pieces: v.nullable(v.object({ whole: countSchema, part: countSchema, rate: rateSchema })),
  advice: v.nullable(v.picklist(ADVICE_KINDS)),
})

const keptSet = v.object({
  members: v.array(countSchema),
  score: v.number(),
  worstPair: v.number(),
  worst: v.nullable(v.tuple([countSchema, countSchema])),
  proven: v.boolean(),
  bound: v.number(),
  unseen: rateSchema,
})

const gestureSchema = v.pipe(
  v.object({
    holdout,
    gestures,
    testers,
    takes: countSchema,
    uncut: countSchema,
    accuracy: rateSchema,
    pairs: v.array(pair),
    profiles: v.array(
      v.object({
        gesture: countSchema,
        takes: countSchema,
        mean: v.array(v.number()),
        deviation: v.array(v.number()),
        durationMs: spread,
      }),
    ),
    length: countSchema,
    channels: countSchema,
    subsets: v.array(keptSet),
  }),
  v.check((decision) =>
    decision.profiles.every(
      ({ mean, deviation }) =>
        mean.length === decision.length * decision.channels && deviation.length === mean.length,
    ),
  ),
  v.check((decision) => {
    const known = (index: number) => index < decision.gestures.length
    return (
      decision.pairs.every(({ first, second }) => known(first) && known(second)) &&
      decision.subsets.every(({ members }) => members.every(known))
    )
  }),
)

const curve = v.object({
  points: v.pipe(
    v.array(
      v.object({
        count: countSchema,
        rate: meanRate,
        draws: countSchema,
        least: v.number(),
        most: v.number(),
      }),
    ),
    v.minLength(1),
  ),
  next: v.number(),
  gain: v.nullable(v.object({ value: v.number(), low: v.number(), high: v.number() })),
})

const background = v.nullable(
  v.object({ hours: v.number(), activations: countSchema, low: v.number(), high: v.number() }),
)

const dataSchema = v.object({
  holdout,
  gestures,
  testers,
  takes: v.nullable(curve),
  byTesters: v.nullable(curve),
  errors: v.array(v.object({ gesture: countSchema, wrong: countSchema, rate: rateSchema })),
  background,
  next: v.pipe(v.array(v.picklist(NEXT_KINDS)), v.minLength(1)),
})

const result = v.object({
  setting: v.object({
    rateHz: v.number(),
    rangeG: v.number(),
    bits: v.number(),
    accelNoise: v.number(),
    gyroNoise: v.number(),
    gyro: v.boolean(),
  }),
  axis: v.picklist([...SWEEP_AXES, 'own', 'together']),
  accuracy: rateSchema,
  loss: v.object({
    onlyFirst: countSchema,
    onlySecond: countSchema,
    n: countSchema,
    value: numberOrNone,
    low: v.number(),
    high: v.number(),
  }),
  mcnemar: v.number(),
  verdict: v.picklist(['enough', 'worse', 'open']),
  takesNeeded: v.nullable(v.number()),
  background,
  clipped: rateSchema,
  flashBytes: v.number(),
  ramBytes: v.number(),
  decisionMs: v.number(),
})

const sensorSchema = v.object({
  holdout,
  tolerance: v.number(),
  testers,
  own: result,
  results: v.array(result),
  together: v.array(result),
  cheapest: result,
  limits: v.object({
    recordedHz: v.number(),
    contentHz: v.number(),
    untriedHz: v.array(v.number()),
    largestG: v.number(),
    phoneClipG: v.nullable(v.number()),
    floorNoise: v.nullable(v.number()),
    withoutGyro: countSchema,
  }),
})

/** Whether a value of unknown origin is what was found on pairs and sets of gestures. */
export function isGestureDecision(value: unknown): value is GestureDecision {
  return v.is(gestureSchema, value)
}

/** Whether a value of unknown origin is what was found on the amount of data. */
export function isDataDecision(value: unknown): value is DataDecision {
  return v.is(dataSchema, value)
}

/** Whether a value of unknown origin is what was found on sensors. */
export function isSensorDecision(value: unknown): value is SensorDecision {
  return v.is(sensorSchema, value)
}
