import * as v from 'valibot'

/** A share of nothing is NaN. */
export const numberOrNone = v.union([v.number(), v.nan()])

export const countSchema = v.pipe(v.number(), v.integer(), v.minValue(0))

/** A `Rate`, for reading back what was kept. */
export const rateSchema = v.object({
  hits: countSchema,
  n: countSchema,
  value: numberOrNone,
  low: numberOrNone,
  high: numberOrNone,
})
