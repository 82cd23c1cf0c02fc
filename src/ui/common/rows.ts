/** Rows that are in the page, [first, last). */
export interface Rows {
  first: number
  last: number
}

/** A stretch of rows that are in the page, or of `gap` rows that are not. */
export type Run = { from: number; to: number } | { from: number; gap: number }

/** Rows are taken in and out by so many, so that not every pixel of scrolling asks for new ones. */
const STEP = 8
/** Windows above and below that are filled too: room for a flick of the thumb. */
const BEYOND = 1

/**
 * @param top of the list below the window's edge, px; negative when scrolled past
 * @param windowPx height of the window
 * @param rowPx height of a row
 */
export function rowsWanted(top: number, windowPx: number, rowPx: number, count: number): Rows {
  const first = Math.floor((-top - BEYOND * windowPx) / rowPx / STEP) * STEP
  const last = Math.ceil((-top + (1 + BEYOND) * windowPx) / rowPx / STEP) * STEP
  const clamp = (row: number) => Math.max(0, Math.min(count, row))
  // Never none: a row must be there to be measured.
  return { first: clamp(first), last: Math.max(clamp(last), Math.min(count, clamp(first) + STEP)) }
}

/** The whole list as runs in order: rows wanted, those that stay wherever they lie, and gaps. */
export function runsOf({ first, last }: Rows, always: readonly number[], count: number): Run[] {
  const ends = Math.min(last, count)
  const single = [...new Set(always)].filter((at) => at < first || at >= ends)
  const stretches = [
    ...single.map((at) => ({ from: at, to: at + 1 })),
    ...(ends > first ? [{ from: first, to: ends }] : []),
  ].sort((a, b) => a.from - b.from)
  const runs: Run[] = []
  let at = 0
  for (const stretch of stretches) {
    if (stretch.from > at) runs.push({ from: at, gap: stretch.from - at })
    runs.push(stretch)
    at = stretch.to
  }
  if (count > at) runs.push({ from: at, gap: count - at })
  return runs
}

/** Row that a key leads to from the row with the focus; null when it leads nowhere. */
export function focusAfter(key: string, from: number | null, count: number): number | null {
  if (from === null || count === 0) return null
  const to = { ArrowDown: from + 1, ArrowUp: from - 1, Home: 0, End: count - 1 }[key]
  return to === undefined || to < 0 || to >= count ? null : to
}
