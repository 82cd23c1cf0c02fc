const LABEL_PX = 13

/** Labels at the ends of lines, pushed down where they would cover each other; from top to bottom. */
export function spreadLabels<T extends { y: number }>(labels: readonly T[]): T[] {
  const spread = labels.map((label) => ({ ...label })).sort((a, b) => a.y - b.y)
  for (const [i, label] of spread.entries()) {
    const above = spread[i - 1]
    if (above !== undefined) label.y = Math.max(label.y, above.y + LABEL_PX)
  }
  return spread
}
