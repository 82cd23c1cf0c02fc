import { BOARD_EVIDENCE } from '../../words/en/board-evidence'
import { BOARD_SCALE } from '../../words/en/board-finding-scale'
import type { BenchLog } from './bench-log'
import { ACCEL_CONFUSIONS, nearestConfusion } from './families'
import type { Finding } from './finding'
import { ACCEL_SCALE_LIMIT, ACCEL_SCALE_LIMIT_ONE_POSE } from './limits'
import { nearestSignedAxes, readFaces } from './poses'

/** 1 g must read 1 g. Sets the factor found, so that later checks see right values. */
export function checkAccelScale(bench: BenchLog): Finding | null {
  const found = measure(bench)
  if (found === null) return null
  const { factor, limit, from } = found
  if (Math.abs(Math.log(factor)) <= Math.log(limit)) return null
  const confusion = nearestConfusion(factor, ACCEL_CONFUSIONS, bench.isCounts)
  bench.accelFactor = factor
  const unit = confusion?.kind === 'unit'
  const evidence = {
    kind: 'bars' as const,
    unit: 'g',
    bars: [{ label: BOARD_EVIDENCE.gravity, value: factor, low: 1 / limit, high: limit }],
  }
  return {
    code: unit ? 'accel-unit' : 'accel-scale',
    ...BOARD_SCALE.accel({ factor, isUnit: unit, confusion: confusion?.what ?? null, from }),
    evidence,
  }
}

function measure(
  bench: BenchLog,
): { factor: number; limit: number; from: 'faces' | 'one-pose' } | null {
  const faces = readFaces(bench)
  if (faces !== null) {
    const { scale, fit } = nearestSignedAxes(faces.response)
    if (fit > 0.8 && scale > 0) return { factor: scale, limit: ACCEL_SCALE_LIMIT, from: 'faces' }
  }
  const still = bench.part('still')
  if (still === null) return null
  const [x, y, z] = bench.means(still)
  const length = Math.hypot(x!, y!, z!)
  return length > 0 ? { factor: length, limit: ACCEL_SCALE_LIMIT_ONE_POSE, from: 'one-pose' } : null
}
