import { roundHalfAway } from '../../conditioning/counts'
import { fail, ok, type Result } from '../../model/result'
import type { Matrix3, Target, TargetCalibration } from '../../model/target'
import { mean } from '../../statistics/summary'
import { CALIBRATION_TROUBLE } from '../../words/en/board-calibration-trouble'
import { BenchLog, dpsPerUnit, gPerUnit } from '../check/bench-log'
import { nearestSignedAxes, readFaces } from '../check/poses'
import type { BenchPart, StepId } from '../check/steps'
import { rowCount } from '../log/board-log'
import { invert3 } from '../math/solve3'
import { fitAffine } from './affine-fit'

/** One g as the unit of the correction: 14 fractional bits. */
export const CORRECTION_ONE = 16_384

export interface Calibration {
  /** As stored in the target and exported: integers. */
  stored: TargetCalibration
  accelZeroG: number[]
  gyroZeroDps: number[]
  /** Gain of each axis, 1 when exact. */
  gains: number[]
  /** Largest entry off the diagonal of the gain matrix; one degree of pose makes 0.017. */
  crossAxis: number
  /** What the correction leaves of the poses, g rms. */
  residualG: number
  /** Sensitivity that gives 1 on average, 1e-9 g a count. */
  nanoPerLsb: number
}

const FACES: { step: StepId; truth: [number, number, number] }[] = [
  { step: 'face+x', truth: [1, 0, 0] },
  { step: 'face-x', truth: [-1, 0, 0] },
  { step: 'face+y', truth: [0, 1, 0] },
  { step: 'face-y', truth: [0, -1, 0] },
  { step: 'face+z', truth: [0, 0, 1] },
  { step: 'face-z', truth: [0, 0, -1] },
]

/** Beyond this it is not calibration that is needed but the board check. */
const MOST_OFF = 0.2

/**
 * Offsets and gains from six faces, bias of the gyroscope from rest. Cross-axis terms are found by least
 * squares, but a pose one degree off looks like 1.7 % of them: they go into the correction only when
 * the faces were set against a square block.
 * Codes: 'calibrate/faces', 'calibrate/still', 'calibrate/axes', 'calibrate/scale'.
 */
export function calibrate(
  parts: readonly BenchPart[],
  target: Target,
  squareBlock = false,
): Result<Calibration> {
  const bench = new BenchLog(parts, target)
  const faces = readFaces(bench)
  if (faces === null) {
    return fail('calibrate/faces', CALIBRATION_TROUBLE.facesMissing)
  }
  const still = bench.part('still')
  if (still === null || rowCount(still) < 20) {
    return fail('calibrate/still', CALIBRATION_TROUBLE.noRest)
  }
  const axes = nearestSignedAxes(faces.response)
  if (!axes.isIdentity || axes.fit < 0.9) {
    return fail('calibrate/axes', CALIBRATION_TROUBLE.axesExchanged)
  }
  if (Math.abs(axes.scale - 1) > MOST_OFF) {
    return fail('calibrate/scale', CALIBRATION_TROUBLE.gravityOff(axes.scale))
  }
  const measured = FACES.map(({ step }) => bench.means(bench.part(step)!).slice(0, 3))
  const truth = FACES.map((face) => face.truth)
  const fit = fitAffine(truth, measured)
  const gains = [0, 1, 2].map((i) => faces.response[4 * i]!)
  const gainMatrix: Matrix3 = [gains[0]!, 0, 0, 0, gains[1]!, 0, 0, 0, gains[2]!]
  const model = squareBlock ? (fit?.matrix.flat() as Matrix3 | undefined) : gainMatrix
  const inverse = model === undefined ? null : invert3(model)
  if (fit === null || inverse === null) {
    return fail('calibrate/faces', CALIBRATION_TROUBLE.facesAlike)
  }
  const gyroZeroDps = bench.hasGyro ? bench.means(still).slice(3) : [0, 0, 0]
  const accelZeroG = squareBlock ? fit.offset : faces.offset
  const lsbG = bench.isCounts ? gPerUnit(still, target) : target.accel.nanoPerLsb * 1e-9
  const lsbDps = bench.isCounts ? dpsPerUnit(still, target) : target.gyro.nanoPerLsb * 1e-9
  const zero = [
    ...accelZeroG.map((value) => clampWord(value / lsbG)),
    ...gyroZeroDps.map((value) => (lsbDps === 0 ? 0 : clampWord(value / lsbDps))),
  ]
  return ok({
    stored: { zero, correctionQ14: inverse.map((value) => roundHalfAway(value * CORRECTION_ONE)) },
    accelZeroG,
    gyroZeroDps,
    gains,
    crossAxis: Math.max(
      ...fit.matrix.flatMap((row, i) => row.filter((_, j) => i !== j).map(Math.abs)),
    ),
    residualG: Math.sqrt(mean(fit.residual) / FACES.length),
    nanoPerLsb: Math.round(target.accel.nanoPerLsb / mean(gains)),
  })
}

function clampWord(value: number): number {
  return Math.max(-32768, Math.min(32767, roundHalfAway(value)))
}
