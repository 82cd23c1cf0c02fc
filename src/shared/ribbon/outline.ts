import type { RibbonPoint } from './ribbon'

/** A stroke's outline and centre line as SVG path data, in pixels of a square. */
export interface RibbonShape {
  /** Fill with the non-zero rule: overlapping pieces all turn the same way. */
  body: string
  halo: string
  /** Centre line, for drawing along it. */
  line: string
  start: { x: number; y: number }
  /** Largest width of the body, px. */
  fullWidth: number
}

/**
 * Shapes for a picture of `size` × `size` px. Width grows with speed; thin ends keep half a pixel on
 * each side, so that a ribbon still reads at the size of a matrix margin.
 */
export function ribbonShape(points: readonly RibbonPoint[], size: number): RibbonShape {
  const slow = 0.5
  const fast = 0.4 + size / 40
  const margin = slow + fast + 1
  const inner = size - 2 * margin
  const path = points.map((point) => ({
    x: margin + point.x * inner,
    y: margin + point.y * inner,
    radius: slow + fast * point.width,
    halo: slow + fast * point.width + point.halo * inner,
  }))
  const line = path.map((p, i) => `${i === 0 ? 'M' : 'L'}${round(p.x)} ${round(p.y)}`).join('')
  return {
    body: stroke(path.map(({ x, y, radius }) => ({ x, y, radius }))),
    halo: stroke(path.map(({ x, y, halo }) => ({ x, y, radius: halo }))),
    line,
    start: { x: path[0]?.x ?? size / 2, y: path[0]?.y ?? size / 2 },
    fullWidth: 2 * (slow + fast),
  }
}

interface Disc {
  x: number
  y: number
  radius: number
}

/**
 * A stroke of changing width as one polygon a piece and one disc a point. All turn the same way on
 * the screen, so they add up under the non-zero rule even where the path reverses on itself, where a
 * single offset polygon would cancel itself out.
 */
function stroke(discs: readonly Disc[]): string {
  const pieces: string[] = []
  discs.forEach((disc, i) => {
    pieces.push(circle(disc))
    const next = discs[i + 1]
    if (next !== undefined) pieces.push(piece(disc, next))
  })
  return pieces.join('')
}

function piece(a: Disc, b: Disc): string {
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  if (length < 1e-6) return ''
  const nx = -(b.y - a.y) / length
  const ny = (b.x - a.x) / length
  const corner = (disc: Disc, side: number) =>
    `${round(disc.x + side * nx * disc.radius)} ${round(disc.y + side * ny * disc.radius)}`
  return `M${corner(a, 1)}L${corner(b, 1)}L${corner(b, -1)}L${corner(a, -1)}Z`
}

function circle({ x, y, radius }: Disc): string {
  const r = round(radius)
  const left = round(x - radius)
  const right = round(x + radius)
  return `M${left} ${round(y)}A${r} ${r} 0 1 0 ${right} ${round(y)}A${r} ${r} 0 1 0 ${left} ${round(y)}Z`
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100)
}
