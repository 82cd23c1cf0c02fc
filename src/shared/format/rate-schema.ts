import * as v from 'valibot'

/** A share of nothing is NaN, which JSON writes as null. */
export const numberOrNone = v.union([
  v.number(),
  v.nan(),
  v.pipe(
    v.null(),
    v.transform(() => Number.NaN),
  ),
])

export const countSchema = v.pipe(v.number(), v.integer(), v.minValue(0))

/** A `Rate`, for reading back what was kept. */
export const rateSchema = v.object({
  hits: countSchema,
  n: countSchema,
  value: numberOrNone,
  low: numberOrNone,
  high: numberOrNone,
})
