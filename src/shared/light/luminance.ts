/** Red, green and blue in linear light, each 0 to 1. */
export type LinearRgb = readonly [number, number, number]

/**
 * One channel of sRGB, 0 to 1, in linear light. The knee is at 0.04045 (IEC 61966-2-1); WCAG prints
 * 0.03928, which gives the same for every 8-bit value.
 */
export function linearOf(channel: number): number {
  return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4
}

/** The inverse of `linearOf`. */
export function encodedOf(linear: number): number {
  return linear <= 0.0031308 ? linear * 12.92 : 1.055 * linear ** (1 / 2.4) - 0.055
}

/** Relative luminance as WCAG 2.2 defines it, 0 to 1. */
export function relativeLuminance([red, green, blue]: LinearRgb): number {
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** Below this sum of channels there is no colour to speak of: taken as the white of no light. */
const DARK_SUM = 0.01

/** White of D65 in CIE 1976 u'v'. */
const WHITE_UV = [0.1978, 0.4683] as const

/** CIE 1976 UCS chromaticity u'v' of a colour of sRGB's primaries; white for darkness. */
export function chromaticity([red, green, blue]: LinearRgb): readonly [number, number] {
  if (red + green + blue < DARK_SUM) return WHITE_UV
  const x = 0.4124564 * red + 0.3575761 * green + 0.1804375 * blue
  const y = 0.2126729 * red + 0.7151522 * green + 0.072175 * blue
  const z = 0.0193339 * red + 0.119192 * green + 0.9503041 * blue
  const sum = x + 15 * y + 3 * z
  return [(4 * x) / sum, (9 * y) / sum]
}

export function uvDistance(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1])
}

/** Share of red in linear light; 0 for darkness. */
export function redShare([red, green, blue]: LinearRgb): number {
  const sum = red + green + blue
  return sum < DARK_SUM ? 0 : red / sum
}

/** Saturated red after WCAG 2.2: R / (R + G + B) >= 0.8, in linear light and not in sRGB values. */
export function isSaturatedRed(colour: LinearRgb): boolean {
  return redShare(colour) >= 0.8
}

/** (R - G - B) x 320 of the older definition (Harding and Binnie), negatives taken as 0. */
export function redAmount([red, green, blue]: LinearRgb): number {
  return Math.max(0, (red - green - blue) * 320)
}
