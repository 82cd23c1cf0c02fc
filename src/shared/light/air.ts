import { dot } from '../attitude/vector'
import type { AccelSign } from '../model/library'
import type { SampleBlock } from '../model/sample'
import { tipPath } from '../ribbon/tip-path'
import { viewPlane } from '../ribbon/view-plane'
import type { LinearRgb } from './luminance'
import { RUN_STEP_MS, type Run } from './run'

/** What a moving prop draws in the air, at the speed of a recorded take. */
export interface AirTrail {
  /** Metres to the right and up in the picture, with the light at that moment. */
  points: { x: number; y: number; colour: LinearRgb }[]
  /** Of the tip, m/s. */
  medianMps: number
  peakMps: number
}

/**
 * Trail of a take with the light that plays during it; null when no path can be told from it.
 * @param tip direction of the prop's tip in the axes of the samples, length 1
 */
export function airTrail(
  block: SampleBlock,
  tip: [number, number, number],
  sign: AccelSign,
  run: Run,
): AirTrail | null {
  const path = tipPath(block, tip, sign)
  if (path === null) return null
  const { right, top } = viewPlane(path.points)
  const stepMs = path.durationMs / Math.max(1, path.points.length - 1)
  const points = path.points.map((point, i) => ({
    x: dot(point, right),
    y: dot(point, top),
    colour: run[Math.min(run.length - 1, Math.round((i * stepMs) / RUN_STEP_MS))] ?? [0, 0, 0],
  }))
  const speeds = [...path.speeds].sort((a, b) => a - b)
  return {
    points,
    medianMps: speeds[Math.floor(speeds.length / 2)] ?? 0,
    peakMps: speeds.at(-1) ?? 0,
  }
}
