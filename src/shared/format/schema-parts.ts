import * as v from 'valibot'

/** Parts that the schemas of files share. */
export const finite = (low: number, high: number) =>
  v.pipe(v.number(), v.minValue(low), v.maxValue(high))
export const whole = (low: number, high: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(high))
export const text = (maxLength: number) => v.pipe(v.string(), v.maxLength(maxLength))
export const name = v.pipe(v.string(), v.minLength(1), v.maxLength(100))

/** Chosen by the writer, such as a UUID. */
export const id = v.pipe(v.string(), v.regex(/^[A-Za-z0-9][A-Za-z0-9._:-]{0,99}$/))

/** RFC 3339 in UTC, with 'Z'. */
export const instant = v.pipe(v.string(), v.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?Z$/))

const DAY_MS = 86_400_000
/** From the start of a recording. */
export const timeMs = finite(-DAY_MS, 30 * DAY_MS)
export const span = v.strictObject({ startMs: timeMs, endMs: timeMs })
export const lengthMs = finite(0, 30 * DAY_MS)

export const hand = v.picklist(['left', 'right', 'unknown'])

export const device = v.strictObject({
  label: text(500),
  rateHz: finite(0, 100_000),
  accelStepMps2: finite(0, 1_000),
  gyroStepDps: finite(0, 100_000),
  accelSign: v.picklist([1, -1, 0]),
  hasGyro: v.boolean(),
})

export const sensorRange = v.strictObject({
  fullScale: finite(0.001, 100_000),
  nanoPerLsb: finite(1, 4_294_967_295),
})
