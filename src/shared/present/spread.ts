/** At most `most` items, evenly spaced over the list, first and last among them. */
export function spread<T>(items: readonly T[], most: number): T[] {
  if (items.length <= most) return [...items]
  if (most === 1) return items.slice(0, 1)
  const step = (items.length - 1) / (most - 1)
  return Array.from({ length: most }, (_, i) => items[Math.round(i * step)] as T)
}
