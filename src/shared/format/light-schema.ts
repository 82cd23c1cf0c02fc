import * as v from 'valibot'
import { type Answer, EASES, LIGHT_KINDS, LIGHT_RULES, type LightSettings } from '../model/light'

/** Shapes of light, LED and cells in `library.json`; ranges are those of `mvw_light.h`. */
const whole = (low: number, high: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(high))
const finite = (low: number, high: number) => v.pipe(v.number(), v.minValue(low), v.maxValue(high))
const text = (maxLength: number) => v.pipe(v.string(), v.maxLength(maxLength))

const byte = whole(0, 255)
const emission = v.strictTuple([byte, byte, byte])
const ms = whole(0, 65_535)

const key = v.strictObject({
  atMs: ms,
  level: byte,
  colour: emission,
  ease: v.picklist(EASES),
})

const effect = v.strictObject({
  kind: v.picklist(LIGHT_KINDS),
  rule: v.picklist(LIGHT_RULES),
  next: v.nullable(text(100)),
  low: byte,
  high: byte,
  colour: emission,
  hue: byte,
  turn: byte,
  rounds: whole(0, 65_535),
  periodMs: whole(20, 65_535),
  fadeMs: ms,
  keys: v.pipe(v.array(key), v.maxLength(64)),
})

const steps = v.pipe(
  v.array(v.strictObject({ value: whole(0, 20_000), ms: whole(1, 10_000) })),
  v.maxLength(64),
)

export const answerSchema = v.strictObject({ light: effect, sound: steps, vibration: steps })

const spread = v.strictObject({
  min: finite(0, 1_000_000),
  typ: finite(0, 1_000_000),
  max: finite(0, 1_000_000),
})

const emitter = v.strictObject({
  forwardV: spread,
  currentMa: finite(0.01, 255),
  resistorOhm: finite(0, 1_000_000),
})

const led = v.strictObject({
  pwmHz: finite(1, 10_000_000),
  pwmBits: whole(4, 16),
  emitters: v.strictTuple([emitter, emitter, emitter]),
  limitMa: whole(0, 65_535),
  driverOhm: finite(0, 10_000),
})

const power = v.strictObject({
  cell: text(100),
  series: whole(1, 24),
  capacityMah: spread,
  freshV: finite(0.1, 60),
  nominalV: finite(0.1, 60),
  endV: finite(0.1, 60),
  cellOhm: finite(0, 10_000),
  maxMa: finite(0.001, 1_000_000),
  selfDischargePercent: finite(0, 100),
  supply: v.picklist(['direct', 'boost']),
  boostV: finite(0.1, 60),
  boostEfficiency: finite(0.3, 1),
  processorMa: spread,
  sensorMa: spread,
  standbyMa: spread,
  offUa: spread,
  answersPerHour: finite(0, 100_000),
})

const acknowledgement = v.strictObject({
  text: text(2_000),
  at: v.pipe(v.string(), v.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?Z$/)),
  covers: v.pipe(v.array(text(500)), v.maxLength(1_000)),
})

export const lightSchema = v.strictObject({
  answers: v.strictObject({ idle: answerSchema, reject: answerSchema, low: answerSchema }),
  minChangeMs: ms,
  led,
  power,
  acknowledgement: v.nullable(acknowledgement),
})

export function isAnswer(value: unknown): value is Answer {
  return v.is(answerSchema, value)
}

export function isLightSettings(value: unknown): value is LightSettings {
  return v.is(lightSchema, value)
}
