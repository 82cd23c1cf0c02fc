import type { Matrix3 } from '../../model/target'
import { determinant } from '../../target/rotation'
import type { BenchLog } from './bench-log'
import { GYRO_CONFUSIONS, nearestConfusion } from './families'
import type { Evidence, Finding } from './finding'
import { GYRO_SCALE_LIMIT } from './limits'
import { axesInWords, nearestSignedAxes, readFaces, type SignedAxes } from './poses'
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
    title: unit ? 'The gyroscope is in another unit' : 'The gyroscope has a wrong scale',
    seen: `While gravity turned by 360°, the gyroscope’s readings add up to ${(360 * scale).toPrecision(4)}°: a factor of ${scale.toPrecision(4)}.`,
    causes: [
      ...(confusion === null
        ? []
        : [`${confusion.what[0]!.toUpperCase()}${confusion.what.slice(1)}.`]),
      ...(untimed
        ? ['The log has no times: if the true rate differs from the target’s, so does this factor.']
        : []),
      'The range bits of the control register were not written, or by a reset lost.',
    ],
    next: [
      'Take the sensitivity of the range from the data sheet; never compute it from the range.',
      'Read back the range bits of the gyroscope.',
      'Turn the board by exactly one turn against a straight edge and add up the readings: 360°.',
    ],
    evidence: {
      kind: 'bars',
      unit: '°',
      bars: [
        {
          label: 'one turn',
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
        label: `${row} with ${column} up`,
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
    title: 'The six faces do not fit together',
    seen: 'The six poses do not stand at right angles, or two of them are the same.',
    causes: ['A pose was mixed up or logged while the board moved.', 'One axis hardly answers.'],
    next: ['Log the six faces again, against a square block.', 'Watch which axis changes least.'],
    evidence: responseBars(response),
  }
}

function mirrored(seen: { accel: SignedAxes; response: Matrix3 } | null): Finding {
  const which = seen === null ? '' : `: ${axesInWords(seen.accel)}`
  return {
    code: 'axes-mirrored',
    title: 'An axis sign is flipped',
    seen: `The axes form a left-handed set (determinant −1)${which}. No way of mounting does that.`,
    causes: [
      'One axis is negated in the driver, or two are exchanged without a sign.',
      'The axes were read off the board’s bottom side.',
      'A library of the sensor converts to another convention.',
    ],
    next: [
      'Print the registers as they come, without any exchange, and log the faces again.',
      'Compare the arrows of the data sheet with pin 1 on the board.',
    ],
    evidence: seen === null ? { kind: 'rows', rows: [] } : responseBars(seen.response),
  }
}

function turned(accel: SignedAxes, response: Matrix3): Finding {
  return {
    code: 'axes-turned',
    title: 'The axes are exchanged',
    seen: `The axes are turned to what the poses said: ${axesInWords(accel)}. Both sensors agree, and handedness is right.`,
    causes: [
      'The part is soldered or drawn at another angle than was thought.',
      'The driver turns the axes to the board’s.',
      'The poses were named by the board’s edges and not by the sensor’s arrows.',
    ],
    next: [
      'Find pin 1 with a magnifier and compare it with the drawing.',
      'If it is meant, take it as the mounting: exchange the axes on Prop.',
    ],
    evidence: responseBars(response),
  }
}

function differ(relative: SignedAxes): Finding {
  return {
    code: 'axes-differ',
    title: 'Gyroscope and accelerometer do not share their axes',
    seen: `Turns of gravity and readings of the gyroscope belong to different axes or signs: ${axesInWords(relative) || 'all signs'}.`,
    causes: [
      'The driver exchanges or negates axes of one sensor only.',
      'Registers of the two sensors are read in different orders.',
      'The part has two dies whose axes differ; the data sheet says so.',
    ],
    next: [
      'Turn the board slowly about z, anticlockwise from above: z of the gyroscope must be positive.',
      'Compare the two register maps line by line.',
    ],
    evidence: responseBars(relative.matrix, ''),
  }
}
