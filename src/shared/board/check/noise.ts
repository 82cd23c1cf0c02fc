import { AXIS_NAMES } from '../../model/sample'
import { mean, median } from '../../statistics/summary'
import { BOARD_NOISE } from '../../words/en/board-finding-noise'
import { type BoardLog, rowCount } from '../log/board-log'
import { type Spectrum, spectrumOf } from '../math/spectrum'
import { type BenchLog, dpsPerUnit, gPerUnit } from './bench-log'
import { traceOf } from './evidence'
import type { Finding } from './finding'
import {
  ACCEL_NOISE_LIMIT_G,
  GYRO_NOISE_LIMIT_DPS,
  LINE_FROM_HZ,
  LINE_OVER_NOISE,
  LINE_POWER_RATIO,
  noiseBandwidthHz,
} from './limits'
import { mainsOf } from './mains'

const FEWEST_ROWS = 64

interface AxisNoise {
  axis: number
  /** Without lines, g or deg/s rms. */
  sigma: number
  limit: number
  line: { hz: number; amplitude: number } | null
  spectrum: Spectrum
}

/** Noise at rest: lines that something couples in, and what is left beside the printed density. */
export function checkNoise(bench: BenchLog): Finding[] {
  const still = bench.part('still')
  if (still === null || rowCount(still) < FEWEST_ROWS) return []
  const axes = bench.hasGyro ? [0, 1, 2, 3, 4, 5] : [0, 1, 2]
  const all = axes
    .filter((axis) => !bench.frozen.has(axis))
    .map((axis) => noiseOf(bench, still, axis))
  const findings: Finding[] = []
  const lines = all.filter(({ line }) => line !== null)
  const loudest = lines.sort((a, b) => b.line!.amplitude / b.limit - a.line!.amplitude / a.limit)[0]
  if (loudest !== undefined) findings.push(humFinding(bench, loudest))
  for (const sensor of ['accel', 'gyro'] as const) {
    const own = all.filter(({ axis }) => axis < 3 === (sensor === 'accel'))
    const worst = own.sort((a, b) => b.sigma / b.limit - a.sigma / a.limit)[0]
    if (worst !== undefined && worst.sigma > worst.limit) {
      findings.push(noiseFinding(bench, still, sensor, worst))
    }
  }
  return findings
}

function noiseOf(bench: BenchLog, still: BoardLog, axis: number): AxisNoise {
  const spectrum = spectrumOf(bench.column(still, axis), bench.rateHz)
  const { power, binHz, count } = spectrum
  const first = Math.max(3, Math.ceil(LINE_FROM_HZ / binHz))
  const bins = [...power.slice(first, power.length - 2)]
  const floor = median(bins) / Math.LN2
  const line = new Set<number>()
  let peak = first
  for (let k = first; k < power.length - 2; k++) {
    if (power[k]! > power[peak]!) peak = k
    if (power[k]! > LINE_POWER_RATIO * floor) for (let j = -2; j <= 2; j++) line.add(k + j)
  }
  const plain = bins.filter((_, i) => !line.has(first + i))
  const sigma = Math.sqrt(mean(plain))
  const amplitude = Math.sqrt((6 * power[peak]!) / count)
  const density = axis < 3 ? ACCEL_NOISE_LIMIT_G : GYRO_NOISE_LIMIT_DPS
  const lsb =
    axis < 3
      ? gPerUnit(still, bench.target) / bench.accelFactor
      : dpsPerUnit(still, bench.target) / bench.gyroFactor
  const step = bench.isCounts ? lsb : 0
  const stands =
    power[peak]! > LINE_POWER_RATIO * floor &&
    amplitude > LINE_OVER_NOISE * sigma &&
    amplitude > step
  return {
    axis,
    sigma,
    // Rounding to whole counts adds 1/12 of a squared count.
    limit: Math.hypot(density * Math.sqrt(noiseBandwidthHz(bench.rateHz)), step / Math.sqrt(12)),
    line: stands ? { hz: peak * binHz, amplitude } : null,
    spectrum,
  }
}

function humFinding(bench: BenchLog, { axis, line, spectrum }: AxisNoise): Finding {
  const { hz, amplitude } = line!
  return {
    code: 'hum',
    ...BOARD_NOISE.hum({
      sensor: axis < 3 ? 'accel' : 'gyro',
      axis: AXIS_NAMES[axis] ?? '',
      amplitude,
      hz,
      mains: mainsOf(hz, bench.rateHz),
    }),
    evidence: {
      kind: 'spectrum',
      toHz: bench.rateHz / 2,
      levels: thinned(spectrum.power),
      peakHz: hz,
      unit: axis < 3 ? 'g²' : '(°/s)²',
    },
  }
}

function noiseFinding(
  bench: BenchLog,
  still: BoardLog,
  sensor: 'accel' | 'gyro',
  worst: AxisNoise,
): Finding {
  return {
    code: sensor === 'accel' ? 'accel-noise' : 'gyro-noise',
    ...BOARD_NOISE.noisy({
      sensor,
      axis: AXIS_NAMES[worst.axis] ?? '',
      sigma: worst.sigma,
      limit: worst.limit,
    }),
    evidence: traceOf(bench, still, [worst.axis]),
  }
}

/** At most 160 levels, each the largest of its bins. */
function thinned(power: Float64Array): number[] {
  const count = Math.min(160, power.length)
  return Array.from({ length: count }, (_, i) => {
    const from = Math.floor((i * power.length) / count)
    const to = Math.max(from + 1, Math.floor(((i + 1) * power.length) / count))
    return Math.max(...power.subarray(from, to))
  })
}
