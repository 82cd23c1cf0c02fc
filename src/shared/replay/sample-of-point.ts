/**
 * Sample that a point of the normalised segment stands for, with fractions: the middle of its part
 * where the segment had more samples than points, else its place between the first and the last.
 * See `src/core/mvw_resample.c`.
 */
export function sampleOfPoint(
  point: number,
  points: number,
  { start, end }: { start: number; end: number },
): number {
  const count = end - start
  if (count > points) return start + ((point + 0.5) * count) / points - 0.5
  return start + (point * (count - 1)) / Math.max(1, points - 1)
}

/** The last point that stands for a sample at or before this one; -1 before the segment. */
export function pointAtSample(
  sample: number,
  points: number,
  segment: { start: number; end: number },
): number {
  if (sample < segment.start) return -1
  let last = 0
  for (let point = 0; point < points; point++) {
    if (sampleOfPoint(point, points, segment) <= sample) last = point
  }
  return last
}
