import { dot, norm, subtract, type Vector3 } from '../attitude/vector'
import type { AccelSign } from '../model/library'
import type { SampleBlock } from '../model/sample'
import { median, quantile } from '../statistics/summary'
import { drawnApart, type Point2 } from './draw-apart'
import { type EvenPath, evenPath } from './even-path'
import { type Consensus, consensus } from './match-paths'
import { type TipPath, tipPath } from './tip-path'
import { viewPlane } from './view-plane'

/** A point of the picture. The picture is a unit square: x to the right, y down, as on a screen. */
export interface RibbonPoint {
  x: number
  y: number
  /** Speed there, 0 (still) to 1 (as fast as it gets). */
  width: number
  /** Middle distance of the takes from here, in units of the square. */
  halo: number
}

/** A gesture's picture, as data. */
export type Ribbon =
  /** No take has enough samples to be drawn. */
  | { kind: 'none' }
  /** The prop hardly moves: a dot with a tick at the angle the tip points to. */
  | {
      kind: 'static'
      takes: number
      /** Angle of the tip above the horizon, degrees; -90 to 90. */
      elevationDeg: number
    }
  | {
      kind: 'path'
      takes: number
      points: RibbonPoint[]
      /** Largest angle between two directions of the tip during the movement, degrees (median take). */
      extentDeg: number
      /** Largest distance between two points of the path, cm; the point that draws hangs at 36 cm. */
      extentCm: number
      /** Median length of the movement, ms. */
      durationMs: number
    }

export interface RibbonOptions {
  /** Direction of the prop's tip in the axes of the samples, length 1; the phone's top by default. */
  tip?: Vector3
  /** Sign of each take's accelerometer; the W3C sign by default. */
  accelSigns?: readonly AccelSign[]
  /** Points of the picture; 48 by default. */
  points?: number
}

/** Takes whose tip never gets this fast are static, m/s; a trembling hand stays below. */
const STATIC_MPS = 0.25

/** Speed drawn at full width: this share of the points is slower. */
const FULL_WIDTH_QUANTILE = 0.9

/** Largest distance between any two of the points. */
function diameter(points: readonly Vector3[]): number {
  let largest = 0
  for (const a of points) for (const b of points) largest = Math.max(largest, norm(subtract(a, b)))
  return largest
}

/** Largest angle between two unit vectors, degrees, from the chord between them. */
function largestAngleDeg(tips: readonly Vector3[]): number {
  return (2 * Math.asin(Math.min(1, diameter(tips) / 2)) * 180) / Math.PI
}

function staticRibbon(paths: readonly TipPath[]): Ribbon {
  const elevations = paths.map((path) => Math.asin(Math.max(-1, Math.min(1, path.tips[0]![2]))))
  return {
    kind: 'static',
    takes: paths.length,
    elevationDeg: (median(elevations) * 180) / Math.PI,
  }
}

/** Fits path and halo into the unit square, in the middle of it. */
function intoSquare(flat: readonly Point2[], middle: Consensus): RibbonPoint[] {
  const edges = (pick: (p: Point2) => number) => {
    const low = flat.map((p, i) => pick(p) - middle.spreadM[i]!)
    const high = flat.map((p, i) => pick(p) + middle.spreadM[i]!)
    return { low: Math.min(...low), high: Math.max(...high) }
  }
  const [h, v] = [edges((p) => p.x), edges((p) => p.y)]
  const size = Math.max(h.high - h.low, v.high - v.low)
  const fullSpeed = Math.max(quantile(middle.speeds, FULL_WIDTH_QUANTILE), 1e-9)
  return flat.map((p, i) => ({
    x: 0.5 + (p.x - (h.low + h.high) / 2) / size,
    y: 0.5 + (p.y - (v.low + v.high) / 2) / size,
    width: Math.min(1, middle.speeds[i]! / fullSpeed),
    halo: middle.spreadM[i]! / size,
  }))
}

/** The path as seen in its plane, m; y down. */
function project(points: readonly Vector3[]): Point2[] {
  const { right, top } = viewPlane(points)
  return points.map((p) => ({ x: dot(p, right), y: -dot(p, top) }))
}

/**
 * The ribbon of one gesture: the path its takes draw with the prop's tip, seen where it varies most.
 * Strokes that lie on each other are drawn apart. The tip follows attitude and, for movements that shift the prop more than they turn it, the
 * displacement of the fist. Takes may come in any order; equal takes give equal pictures.
 */
export function computeRibbon(takes: readonly SampleBlock[], options: RibbonOptions = {}): Ribbon {
  const tip = options.tip ?? [0, 1, 0]
  const paths = takes
    .map((take, i) => tipPath(take, tip, options.accelSigns?.[i] ?? 1))
    .filter((path) => path !== null)
  if (paths.length === 0) return { kind: 'none' }
  const peaks = paths.map((path) => path.speeds.reduce((peak, speed) => Math.max(peak, speed), 0))
  if (median(peaks) < STATIC_MPS) return staticRibbon(paths)
  const even: EvenPath[] = paths.map((path) => evenPath(path, options.points ?? 48))
  const middle = consensus(even)
  return {
    kind: 'path',
    takes: paths.length,
    points: intoSquare(drawnApart(project(middle.points)), middle),
    extentDeg: median(even.map((path) => largestAngleDeg(path.tips))),
    extentCm: 100 * diameter(middle.points),
    durationMs: median(paths.map((path) => path.durationMs)),
  }
}
