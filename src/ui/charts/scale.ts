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
