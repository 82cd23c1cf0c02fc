/** Smallest of 1, 2, 2.5, 5 times a power of ten that is not below `value`; 1 for 0 and less. */
export function niceCeiling(value: number): number {
  if (!(value > 0)) return 1
  const power = 10 ** Math.floor(Math.log10(value))
  const step = [1, 2, 2.5, 5, 10].find((factor) => factor * power >= value * (1 - 1e-9)) ?? 10
  return step * power
}

/** Ticks at a nice step from 0 on, at most `most` of them, ends included when they fall on it. */
export function ticks(from: number, to: number, most: number): number[] {
  if (!(to > from)) return []
  const step = niceCeiling((to - from) / Math.max(1, most))
  const found: number[] = []
  for (let i = Math.ceil(from / step - 1e-9); i * step <= to + step * 1e-9; i++) {
    found.push(Number((i * step).toPrecision(12)))
  }
  return found
}

/**
 * Height of a motion energy on a square-root scale: thresholds lie at a few percent of the peaks,
 * and near them is where the question is.
 */
export function rootHeight(value: number, top: number, heightPx: number): number {
  return heightPx * (1 - Math.sqrt(Math.min(Math.max(value, 0), top) / top))
}

/** Place of a value on an axis stretched near 0: the root of its share, 0 to 1. */
export function rootShare(value: number, top: number, degree: number): number {
  return (Math.min(Math.max(value, 0), top) / top) ** (1 / degree)
}

/** Round values for such an axis from 0 to its top, at least `apart` of the axis from each other. */
export function rootTicks(top: number, degree: number, apart: number): number[] {
  const found = [top]
  let last = 1
  for (let power = Math.floor(Math.log10(top)); last > apart; power--) {
    for (const digit of [5, 2, 1]) {
      const value = Number((digit * 10 ** power).toPrecision(3))
      const share = rootShare(value, top, degree)
      if (value >= top || last - share < apart || share < apart) continue
      found.push(value)
      last = share
    }
    if (rootShare(10 ** power, top, degree) < apart) break
  }
  return [0, ...found.reverse()]
}
