import * as v from 'valibot'
import type { LABEL_FIELDS, LabelChange } from '../collect/labels'
import { PLAN_GRIPS, PLAN_HANDS, PLAN_ORDERS, type Plan } from '../collect/plan'
import type { Session } from '../collect/session'
import { WITHDRAWAL_KINDS, type Withdrawal } from '../collect/withdrawal'
import { device, hand, id, instant, name, sensorRange, span, text, whole } from './schema-parts'

/** Shapes of plans, sessions, withdrawals and changed labels, in `library.json` and `session.json`. */
const key = v.pipe(v.string(), v.regex(/^[0-9a-f]{32}$/))

/** SHA-256, hex. */
export const contentIdSchema = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))

const demonstration = v.strictObject({
  periodMs: whole(20, 500),
  values: v.pipe(v.array(whole(-127, 127)), v.maxLength(6 * 400)),
})

const planGesture = v.strictObject({
  gestureId: id,
  name,
  takes: whole(1, 50),
  words: text(200),
  demonstration: v.nullable(demonstration),
})

export const planSchema = v.strictObject({
  id,
  libraryId: id,
  title: name,
  gestures: v.pipe(v.array(planGesture), v.minLength(1), v.maxLength(64)),
  order: v.picklist(PLAN_ORDERS),
  hand: v.picklist(PLAN_HANDS),
  grip: v.picklist(PLAN_GRIPS),
  restEvery: whole(0, 1_000),
  restMs: whole(0, 600_000),
  backgroundMs: whole(0, 3_600_000),
  part: v.strictObject({ number: whole(1, 64), of: whole(1, 64) }),
  folder: v.exactOptional(v.pipe(text(300), v.regex(/^https?:\/\//))),
  ranges: v.exactOptional(v.strictObject({ accel: sensorRange, gyro: sensorRange })),
})

export const sessionSchema = v.strictObject({
  id: key,
  planId: id,
  libraryId: id,
  title: name,
  testerCode: v.pipe(text(40), v.minLength(1)),
  testerKey: key,
  hand,
  consentAt: instant,
  startedAt: instant,
  endedAt: instant,
  device,
  gestures: v.pipe(v.array(v.strictObject({ id, name })), v.maxLength(64)),
})

export const withdrawalSchema = v.strictObject({
  kind: v.picklist(WITHDRAWAL_KINDS),
  key: id,
  why: v.picklist(['withdrawn', 'dropped']),
  testerCode: text(40),
  at: instant,
})

const change = <const F extends (typeof LABEL_FIELDS)[number], V extends v.GenericSchema>(
  field: F,
  value: V,
) =>
  v.strictObject({
    id: key,
    field: v.literal(field),
    value,
    at: instant,
    over: v.pipe(v.array(key), v.maxLength(1_000)),
  })

export const historySchema = v.pipe(
  v.array(
    v.variant('field', [
      change('gestureId', v.nullable(id)),
      change('testerCode', text(40)),
      change('hand', hand),
      change('trim', v.nullable(span)),
      change('note', text(4_000)),
    ]),
  ),
  v.maxLength(1_000),
)

export const plansSchema = v.pipe(v.array(planSchema), v.maxLength(1_000))
export const sessionsSchema = v.pipe(v.array(sessionSchema), v.maxLength(10_000))
export const withdrawalsSchema = v.pipe(v.array(withdrawalSchema), v.maxLength(100_000))

export function isPlan(value: unknown): value is Plan {
  return v.is(planSchema, value)
}

export function isPlans(value: unknown): value is Plan[] {
  return v.is(plansSchema, value)
}

export function isSessions(value: unknown): value is Session[] {
  return v.is(sessionsSchema, value)
}

export function isWithdrawals(value: unknown): value is Withdrawal[] {
  return v.is(withdrawalsSchema, value)
}

export function isHistory(value: unknown): value is LabelChange[] {
  return v.is(historySchema, value)
}
