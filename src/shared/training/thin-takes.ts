/** A gesture is met too seldom when it has less than this of its share. */
const FAIR_SHARE = 0.5

/**
 * Every k-th item, so that at most `most` are left, in their order. Recordings often come in a round
 * of the gestures, and every k-th of a round can be the same few of them: then the same number is
 * taken of each gesture's own row instead.
 */
export function thinned<T>(
  items: readonly T[],
  most: number,
  gestureOf: (item: T) => number,
): readonly T[] {
  const step = Math.ceil(items.length / most)
  if (step <= 1) return items
  const some = items.filter((_, index) => index % step === 0)
  return isFair(some, items, gestureOf) ? some : ofEachGesture(items, most, gestureOf)
}

function isFair<T>(some: readonly T[], all: readonly T[], gestureOf: (item: T) => number): boolean {
  const counts = countOf(some, gestureOf)
  const share = some.length / all.length
  return [...countOf(all, gestureOf)].every(([gesture, count]) => {
    return (counts.get(gesture) ?? 0) >= Math.floor(FAIR_SHARE * share * count)
  })
}

/** At least one of each gesture, evenly over its own row. */
function ofEachGesture<T>(items: readonly T[], most: number, gestureOf: (item: T) => number): T[] {
  const seen = new Map<number, number>()
  const totals = countOf(items, gestureOf)
  return items.filter((item) => {
    const gesture = gestureOf(item)
    const before = seen.get(gesture) ?? 0
    seen.set(gesture, before + 1)
    const total = totals.get(gesture) ?? 1
    const wanted = Math.max(1, Math.floor((most * total) / items.length))
    // Taken where its number among the wanted goes up.
    return Math.floor(((before + 1) * wanted) / total) > Math.floor((before * wanted) / total)
  })
}

function countOf<T>(items: readonly T[], gestureOf: (item: T) => number): Map<number, number> {
  const counts = new Map<number, number>()
  for (const item of items) {
    const gesture = gestureOf(item)
    counts.set(gesture, (counts.get(gesture) ?? 0) + 1)
  }
  return counts
}
