import * as v from 'valibot'
import { type GripTolerance, REMEDIES } from '../grip/grip-tolerance'
import { rateSchema } from './rate-schema'

const points = v.pipe(
  v.array(v.object({ angleDeg: v.number(), recall: rateSchema })),
  v.minLength(1),
)

const schema = v.object({
  remedies: v.pipe(
    v.array(
      v.object({
        remedy: v.picklist(REMEDIES),
        roll: points,
        tilt: points,
        tableBytes: v.number(),
        rollUnknown: v.nullable(rateSchema),
      }),
    ),
    v.minLength(1),
  ),
  holdout: v.picklist(['tester', 'take']),
  rounds: v.number(),
  verticalDeg: v.number(),
})

/** Whether a value of unknown origin is a measurement of the grip. */
export function isGripTolerance(value: unknown): value is GripTolerance {
  return v.is(schema, value)
}
