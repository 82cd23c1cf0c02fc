/** Samples `from` (inclusive) to `to` (exclusive) that a chart shows. */
export interface Span {
  from: number
  to: number
}

/**
 * An SVG path through samples. With more samples than pixel columns each column is drawn from its
 * smallest to its largest value, so that no peak is lost however long the recording is.
 * @param at value of sample i
 * @param widthPx width that the span fills
 * @param yOf pixel of a value
 */
export function tracePath(
  at: (index: number) => number,
  span: Span,
  widthPx: number,
  yOf: (value: number) => number,
): string {
  const count = span.to - span.from
  if (count < 2 || widthPx <= 0) return ''
  const step = widthPx / (count - 1)
  const parts: string[] = []
  const put = (x: number, value: number) => {
    parts.push(`${parts.length === 0 ? 'M' : 'L'}${x.toFixed(1)} ${yOf(value).toFixed(1)}`)
  }
  if (step >= 0.5) {
    for (let i = 0; i < count; i++) put(i * step, at(span.from + i))
    return parts.join('')
  }
  const columns = Math.max(2, Math.floor(widthPx))
  for (let column = 0; column < columns; column++) {
    const first = span.from + Math.floor((column * count) / columns)
    const last = span.from + Math.floor(((column + 1) * count) / columns)
    const [low, high] = extremes(at, { from: first, to: last })
    put(column + 0.5, low)
    if (high > low) put(column + 0.5, high)
  }
  return parts.join('')
}

/** Smallest and largest value of a span; [0, 0] when it is empty. */
export function extremes(at: (index: number) => number, span: Span): [number, number] {
  if (span.to <= span.from) return [0, 0]
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let i = span.from; i < span.to; i++) {
    const value = at(i)
    if (value < low) low = value
    if (value > high) high = value
  }
  return [low, high]
}
