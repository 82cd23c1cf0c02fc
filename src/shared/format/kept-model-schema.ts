import * as v from 'valibot'
import type { KeptModel } from '../compare/kept-model'
import { MATCHER_WISHES } from '../model/library'
import { evaluationSchema } from './evaluation-schema'
import { countSchema } from './rate-schema'
import { sha256Hex } from './sha256'

const hex = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))
const positive = v.pipe(v.number(), v.gtValue(0))

const schema = v.pipe(
  v.object({
    hash: hex,
    bytes: v.instance(Uint8Array),
    core: v.string(),
    libraryHash: hex,
    training: v.object({
      templatesPerGesture: countSchema,
      length: countSchema,
      bandShare: v.number(),
      rollAlign: v.boolean(),
      segmentation: v.picklist(['motion', 'button']),
      thresholdFactor: positive,
      matcher: v.exactOptional(v.picklist(MATCHER_WISHES)),
    }),
    target: v.object({
      name: v.string(),
      rateHz: positive,
      accelFullScale: positive,
      gyroFullScale: positive,
    }),
    gestures: v.array(v.object({ id: v.string(), name: v.string() })),
    takes: v.array(v.object({ id: v.string(), gestureId: v.string(), testerCode: v.string() })),
    backgrounds: countSchema,
    matcher: v.picklist(['template', 'kernel', 'both']),
    tableBytes: countSchema,
    ramBytes: countSchema,
    pinned: v.boolean(),
    evaluations: v.object({
      tester: v.exactOptional(evaluationSchema),
      take: v.exactOptional(evaluationSchema),
    }),
  }),
  v.check(({ bytes, hash }) => sha256Hex(bytes) === hash),
)

/** The model in a value of unknown origin, null when it is none or its bytes were altered. */
export function keptModelOf(value: unknown): KeptModel | null {
  const parsed = v.safeParse(schema, value)
  return parsed.success ? parsed.output : null
}
