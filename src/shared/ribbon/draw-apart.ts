export interface Point2 {
  x: number
  y: number
}

/** Breadth that a path of strokes on top of each other is drawn out to, as a share of its length. */
const BREADTH_SHARE = 0.6

/**
 * Path length over diameter: up to the first nothing retraces itself (a half circle has 1.57 but is
 * broad enough), from the second on it counts as retraced in full (there and back has 2).
 */
const RETRACE_FROM = 1.4
const RETRACE_FULL = 2

interface Axes {
  along: Point2
  aside: Point2
}

/** Main direction of the points, and across it to the right or, when that is level, down. */
function mainAxes(points: readonly Point2[]): Axes {
  const mx = points.reduce((sum, p) => sum + p.x, 0) / points.length
  const my = points.reduce((sum, p) => sum + p.y, 0) / points.length
  let [xx, xy, yy] = [0, 0, 0]
  for (const p of points) {
    xx += (p.x - mx) ** 2
    xy += (p.x - mx) * (p.y - my)
    yy += (p.y - my) ** 2
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2
  const along = { x: Math.cos(angle), y: Math.sin(angle) }
  const aside = { x: -along.y, y: along.x }
  const leading = Math.abs(aside.x) >= Math.abs(aside.y) ? aside.x : aside.y
  return { along, aside: leading < 0 ? { x: -aside.x, y: -aside.y } : aside }
}

function extent(points: readonly Point2[], axis: Point2): number {
  const places = points.map((p) => p.x * axis.x + p.y * axis.y)
  return Math.max(...places) - Math.min(...places)
}

function pathLength(points: readonly Point2[]): number {
  let sum = 0
  for (let i = 1; i < points.length; i++) {
    sum += Math.sqrt(
      (points[i]!.x - points[i - 1]!.x) ** 2 + (points[i]!.y - points[i - 1]!.y) ** 2,
    )
  }
  return sum
}

/**
 * Draws strokes apart that lie on each other, as if the paper were pulled sideways under the pen: a
 * nod becomes a hairpin, a shake a zigzag whose strokes can be counted. Without it every movement
 * to and fro would be the same thin line. Paths that do not retrace themselves, or are broad enough,
 * stay as they are; between, the pull grows smoothly.
 */
export function drawnApart(points: readonly Point2[]): Point2[] {
  const { along, aside } = mainAxes(points)
  const length = extent(points, along)
  const missing = Math.max(0, BREADTH_SHARE * length - extent(points, aside))
  const retraced =
    (pathLength(points) / Math.max(length, 1e-9) - RETRACE_FROM) / (RETRACE_FULL - RETRACE_FROM)
  const pull = missing * Math.min(1, Math.max(0, retraced))
  return points.map((p, i) => {
    const share = i / (points.length - 1) - 0.5
    return { x: p.x + pull * share * aside.x, y: p.y + pull * share * aside.y }
  })
}
