import { strFromU8, strToU8 } from 'fflate'
import * as v from 'valibot'
import { planSchema } from '../format/collect-schema'
import { parseJson } from '../format/parse-json'
import { AXES } from '../model/sample'
import { type Demonstration, PLAN_GRIPS, PLAN_HANDS, PLAN_ORDERS, type Plan } from './plan'

/*
 * What a link holds of a plan, before it is deflated: the length of a JSON text, 16 bits
 * little-endian, the text, and behind it the values of the demonstrations, an axis after the other,
 * each as the difference from the one before. That deflates to about half of the plan's own JSON.
 * Ranges follow the times in their array: readers that do not know them pass over what is too much.
 */

/** Period and number of rows of a demonstration. */
const outline = v.nullable(v.tuple([v.number(), v.pipe(v.number(), v.integer(), v.minValue(0))]))
const document = v.strictTuple([
  v.string(),
  v.string(),
  v.string(),
  v.tuple([v.number(), v.number(), v.number()]),
  v.tupleWithRest([v.number(), v.number(), v.number()], v.number()),
  v.tuple([v.number(), v.number()]),
  v.array(v.strictTuple([v.string(), v.string(), v.number(), v.string(), outline])),
  v.string(),
])

export function writePlanContent(plan: Plan): Uint8Array {
  const choices = [
    PLAN_ORDERS.indexOf(plan.order),
    PLAN_HANDS.indexOf(plan.hand),
    PLAN_GRIPS.indexOf(plan.grip),
  ]
  const gestures = plan.gestures.map(({ gestureId, name, takes, words, demonstration: shown }) => {
    const rows = shown && [shown.periodMs, shown.values.length / AXES]
    return [gestureId, name, takes, words, rows]
  })
  const times = [plan.restEvery, plan.restMs, plan.backgroundMs, ...rangeNumbers(plan)]
  const part = [plan.part.number, plan.part.of]
  const json = strToU8(
    JSON.stringify([
      plan.id,
      plan.libraryId,
      plan.title,
      choices,
      times,
      part,
      gestures,
      plan.folder ?? '',
    ]),
  )
  const shown = plan.gestures.flatMap(({ demonstration }) => differences(demonstration))
  return Uint8Array.from([json.length & 0xff, json.length >> 8, ...json, ...shown])
}

/** The plan, or null when it is none. */
export function readPlanContent(content: Uint8Array): Plan | null {
  const length = (content[0] ?? 0) | ((content[1] ?? 0) << 8)
  const read = v.safeParse(document, jsonOrNull(strFromU8(content.subarray(2, 2 + length))))
  if (!read.success) return null
  const [id, libraryId, title, [order, hand, grip], times, part] = read.output
  const [restEvery, restMs, backgroundMs, ...ranges] = times
  const folder = read.output[7]
  const bytes = { at: 2 + length, content }
  const gestures = read.output[6].map(([gestureId, name, takes, words, rows]) => {
    const demonstration = rows && { periodMs: rows[0], values: sums(bytes, rows[1]) }
    return { gestureId, name, takes, words, demonstration }
  })
  const plan = v.safeParse(planSchema, {
    id,
    libraryId,
    title,
    gestures,
    order: PLAN_ORDERS[order],
    hand: PLAN_HANDS[hand],
    grip: PLAN_GRIPS[grip],
    restEvery,
    restMs,
    backgroundMs,
    part: { number: part[0], of: part[1] },
    ...(folder === '' ? {} : { folder }),
    ...rangesFrom(ranges),
  })
  return plan.success && bytes.at === content.length ? plan.output : null
}

/** Full scale and sensitivity of both sensors, or nothing. */
function rangeNumbers({ ranges }: Plan): number[] {
  if (ranges === undefined) return []
  const { accel, gyro } = ranges
  return [accel.fullScale, accel.nanoPerLsb, gyro.fullScale, gyro.nanoPerLsb]
}

function rangesFrom([accelG, ngPerLsb, gyroDps, ndpsPerLsb]: readonly number[]) {
  if (accelG === undefined) return {}
  const accel = { fullScale: accelG, nanoPerLsb: ngPerLsb }
  return { ranges: { accel, gyro: { fullScale: gyroDps, nanoPerLsb: ndpsPerLsb } } }
}

function differences(shown: Demonstration | null): number[] {
  const values = shown?.values ?? []
  const rows = values.length / AXES
  return Array.from({ length: values.length }, (_, i) => {
    const [axis, row] = [Math.floor(i / rows), i % rows]
    const before = row === 0 ? 0 : values[(row - 1) * AXES + axis]!
    return (values[row * AXES + axis]! - before) & 0xff
  })
}

function sums(bytes: { at: number; content: Uint8Array }, rows: number): number[] {
  // Fewer bytes than it takes: the values are then too few, and the plan is refused as a whole.
  const own = bytes.content.subarray(bytes.at, bytes.at + rows * AXES)
  bytes.at += rows * AXES
  const values = new Int8Array(own.length)
  for (let i = 0; i < own.length; i++) {
    const [axis, row] = [Math.floor(i / rows), i % rows]
    const before = row === 0 ? 0 : values[(row - 1) * AXES + axis]!
    values[row * AXES + axis] = before + own[i]!
  }
  return [...values]
}

function jsonOrNull(text: string): unknown {
  try {
    return parseJson(text)
  } catch {
    return null
  }
}
