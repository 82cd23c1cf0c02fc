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
    bars: [{ label: 'gravity', value: factor, low: 1 / limit, high: limit }],
  }
  return {
    code: unit ? 'accel-unit' : 'accel-scale',
    title: unit ? 'The accelerometer is in another unit' : 'The accelerometer has a wrong scale',
    seen: `Gravity reads ${factor.toPrecision(3)} g instead of 1 g (${from}).`,
    causes: [
      ...(confusion === null ? [] : [sentence(confusion.what)]),
      ...(unit
        ? []
        : ['The range bits of the control register were not written, or by a reset lost.']),
      ...(unit ? ['The driver converts units that the firmware converts again.'] : []),
      'The words are left-aligned with fewer bits (12 or 14) and are not shifted.',
    ],
    next: [
      'Read back the range bits and compare them with the target’s range on Prop.',
      'Compare counts for 1 g with the data sheet’s sensitivity for that range, not with range / 32768.',
    ],
    evidence,
  }
}

function measure(bench: BenchLog): { factor: number; limit: number; from: string } | null {
  const faces = readFaces(bench)
  if (faces !== null) {
    const { scale, fit } = nearestSignedAxes(faces.response)
    if (fit > 0.8 && scale > 0)
      return { factor: scale, limit: ACCEL_SCALE_LIMIT, from: 'mean over six faces' }
  }
  const still = bench.part('still')
  if (still === null) return null
  const [x, y, z] = bench.means(still)
  const length = Math.hypot(x!, y!, z!)
  return length > 0
    ? { factor: length, limit: ACCEL_SCALE_LIMIT_ONE_POSE, from: 'at rest, one pose' }
    : null
}

function sentence(clause: string): string {
  return `${clause[0]!.toUpperCase()}${clause.slice(1)}.`
}
