/** Small questions about values of unknown origin, to build bigger ones from. */
export type Check = (value: unknown) => boolean

export const isText: Check = (value) => typeof value === 'string'
export const isName: Check = (value) => typeof value === 'string' && value.length > 0
export const isFlag: Check = (value) => typeof value === 'boolean'
export const isNumber: Check = (value) => Number.isFinite(value)
export const isPositive: Check = (value) => Number.isFinite(value) && (value as number) > 0
export const isNotNegative: Check = (value) => Number.isFinite(value) && (value as number) >= 0
export const isCount: Check = (value) => Number.isSafeInteger(value) && (value as number) >= 0
export const isTime: Check = (value) =>
  typeof value === 'string' && !Number.isNaN(Date.parse(value))

export function oneOf(...allowed: readonly unknown[]): Check {
  return (value) => allowed.includes(value)
}

export function orNull(check: Check): Check {
  return (value) => value === null || check(value)
}

/** For fields that earlier versions did not have. */
export function orMissing(check: Check): Check {
  return (value) => value === undefined || check(value)
}

export function listOf(check: Check, length?: number): Check {
  return (value) =>
    Array.isArray(value) && (length === undefined || value.length === length) && value.every(check)
}

/** An object with every field of T passing its check. A field without a check does not compile. */
export function shape<T>(fields: { [Key in keyof Required<T>]: Check }) {
  const checks = Object.entries<Check>(fields)
  return (value: unknown): value is T => {
    if (typeof value !== 'object' || value === null) return false
    const record = value as Record<string, unknown>
    return checks.every(([key, check]) => check(record[key]))
  }
}
