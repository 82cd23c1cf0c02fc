/** A plain decimal number with '.' as decimal point, as JSON and C write it. */
const DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/
const DECIMAL_COMMA = /^[+-]?(\d+,\d*|,\d+)([eE][+-]?\d+)?$/

/** Whether a field is a number written with a decimal comma. */
export function hasDecimalComma(field: string): boolean {
  return DECIMAL_COMMA.test(field.trim())
}

/** The finite number a field holds, or null. Unlike `Number`, refuses '', '0x1f' and 'Infinity'. */
export function parseDecimal(field: string): number | null {
  const trimmed = field.trim()
  if (!DECIMAL.test(trimmed)) return null
  const value = Number(trimmed)
  return Number.isFinite(value) ? value : null
}

/** Shortest decimal that reads back as the same double; keeps the sign of zero. */
export function doubleText(value: number): string {
  return Object.is(value, -0) ? '-0' : String(value)
}

/**
 * Shortest decimal that reads back as the same float32. Nine significant digits always do
 * (IEEE 754-2019, 5.12.2). Phones round to a tenth, which is tried first.
 */
export function float32Text(value: number): string {
  if (value === 0) return doubleText(value)
  const tenths = Math.round(value * 10) / 10
  if (Math.abs(value) < 1e5 && Math.fround(tenths) === value) return String(tenths)
  for (let digits = 1; digits < 9; digits++) {
    const candidate = Number(value.toPrecision(digits))
    if (Math.fround(candidate) === value) return doubleText(candidate)
  }
  return doubleText(Number(value.toPrecision(9)))
}
