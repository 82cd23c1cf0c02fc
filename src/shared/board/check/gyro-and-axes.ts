import type { Matrix3 } from '../../model/target'
import { determinant } from '../../target/rotation'
import { BOARD_EVIDENCE } from '../../words/en/board-evidence'
import { BOARD_AXES } from '../../words/en/board-finding-axes'
import { BOARD_SCALE } from '../../words/en/board-finding-scale'
import type { BenchLog } from './bench-log'
import { GYRO_CONFUSIONS, nearestConfusion } from './families'
import type { Evidence, Finding } from './finding'
import { GYRO_SCALE_LIMIT } from './limits'
import { misreadAxes, nearestSignedAxes, readFaces, type SignedAxes } from './poses'
import { turnResponse } from './turn-response'

/** A response that less of is explained by exchanged axes says nothing on them. */
const CLEAR_FIT = 0.85

/** Scale of the gyroscope, and the axes of both sensors, from six faces and three turns. */
export function checkGyroAndAxes(bench: BenchLog): Finding[] {
  const faces = readFaces(bench)
  const accel = faces === null ? null : nearestSignedAxes(faces.response)
  if (accel !== null && accel.fit < CLEAR_FIT) return [unclear(faces!.response)]
  const turns =
    bench.hasGyro && !bench.sensorFrozen('gyro')
      ? turnResponse(bench, faces?.offset ?? [0, 0, 0])
      : null
  const relative = turns === null ? null : nearestSignedAxes(turns.matrix)
  const clear = relative !== null && relative.fit >= CLEAR_FIT
  const untimed = bench.parts.every(({ log }) => log.tMs === null)
  // A clipped turn adds up to less than it was, never to more.
  const cutShort = bench.gyroClipped && relative !== null && relative.scale < 1
  const knowsAngle = !cutShort && !(bench.unevenRows && untimed)
  const scale = clear && knowsAngle ? gyroScale(bench, relative) : null
  return [scale, axes(accel, clear ? relative : null, faces?.response ?? null)].filter(
    (finding) => finding !== null,
  )
}

function gyroScale(bench: BenchLog, { scale }: SignedAxes): Finding | null {
  if (Math.abs(Math.log(scale)) <= Math.log(GYRO_SCALE_LIMIT)) return null
  const confusion = nearestConfusion(scale, GYRO_CONFUSIONS, bench.isCounts)
  bench.gyroFactor = scale
  const unit = confusion?.kind === 'unit'
  const untimed = bench.parts.every(({ log }) => log.tMs === null)
  return {
    code: unit ? 'gyro-unit' : 'gyro-scale',
    ...BOARD_SCALE.gyro({
      factor: scale,
      isUnit: unit,
      confusion: confusion?.what ?? null,
      isUntimed: untimed,
    }),
    evidence: {
      kind: 'bars',
      unit: '°',
      bars: [
        {
          label: BOARD_EVIDENCE.oneTurn,
          value: 360 * scale,
          low: 360 / GYRO_SCALE_LIMIT,
          high: 360 * GYRO_SCALE_LIMIT,
        },
      ],
    },
  }
}

/**
 * With P the axes of the accelerometer (from the faces) and R the gyroscope as gravity in those axes
 * sees it, the axes of the gyroscope are det(P) R P: a mirrored accelerometer turns gravity the wrong way.
 */
function axes(
  accel: SignedAxes | null,
  relative: SignedAxes | null,
  response: Matrix3 | null,
): Finding | null {
  if (accel === null) {
    if (relative === null || relative.isIdentity) return null
    return relative.matrix.every((value, i) => value === (i % 4 === 0 ? -1 : 0))
      ? mirrored(null)
      : differ(relative)
  }
  const sign = determinant(accel.matrix)
  const product = relative === null ? null : relative.matrix.map((value) => value * sign)
  const same = product === null || product.every((value, i) => value === (i % 4 === 0 ? 1 : 0))
  if (!same) return differ(relative!)
  if (accel.mirrored) return mirrored({ accel, response: response! })
  return accel.isIdentity ? null : turned(accel, response!)
}

function responseBars(response: Matrix3, unit = 'g'): Evidence {
  return {
    kind: 'bars',
    unit,
    bars: ['x', 'y', 'z'].flatMap((row, i) =>
      ['x', 'y', 'z'].map((column, j) => ({
        label: BOARD_EVIDENCE.axisWithAxisUp(row, column),
        value: response[3 * i + j]!,
        low: i === j ? 0.85 : -0.3,
        high: i === j ? 1.15 : 0.3,
      })),
    ),
  }
}

function unclear(response: Matrix3): Finding {
  return {
    code: 'faces-unclear',
    ...BOARD_AXES.facesUnclear,
    evidence: responseBars(response),
  }
}

function mirrored(seen: { accel: SignedAxes; response: Matrix3 } | null): Finding {
  return {
    code: 'axes-mirrored',
    ...BOARD_AXES.mirrored(seen === null ? [] : misreadAxes(seen.accel)),
    evidence: seen === null ? { kind: 'rows', rows: [] } : responseBars(seen.response),
  }
}

function turned(accel: SignedAxes, response: Matrix3): Finding {
  return {
    code: 'axes-turned',
    ...BOARD_AXES.turned(misreadAxes(accel)),
    evidence: responseBars(response),
  }
}

function differ(relative: SignedAxes): Finding {
  return {
    code: 'axes-differ',
    ...BOARD_AXES.differ(misreadAxes(relative)),
    evidence: responseBars(relative.matrix, ''),
  }
}
