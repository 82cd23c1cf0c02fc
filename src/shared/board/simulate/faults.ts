import { AXES } from '../../model/sample'
import type { Matrix3 } from '../../model/target'
import type { Random } from '../../statistics/random'
import { AXIS_ORDERS } from '../../target/mountings'
import { determinant } from '../../target/rotation'
import type { FaultName } from '../../words/en/board-faults'
import type { FindingCode } from '../check/finding'
import type { BenchPart } from '../check/steps'
import { type BoardLog, rowCount } from '../log/board-log'
import type { Disturbance, LogStyle } from './log-of'
import type { SimulatedSensor } from './sensor'

/** A fault to put into a simulated board; each draw has another strength. */
export interface Fault {
  name: FaultName
  /** What the check must say. */
  expected: FindingCode
  /** Logs it can be seen in; any by default. */
  needs?: Partial<LogStyle>
  /** Changes the sensor before it measures. */
  sensor?: (sensor: SimulatedSensor, random: Random) => void
  /** Adds to what the sensor measures. */
  disturb?: (sensor: SimulatedSensor, random: Random) => Disturbance
  /** Changes what was printed. */
  log?: (log: BoardLog, random: Random) => void
  /** The same for all logs of a run, drawn once. */
  run?: (random: Random) => (log: BoardLog) => void
}

const pick = <T>(random: Random, list: readonly T[]): T => list[random.integer(list.length)]!
const sign = (random: Random) => (random.next() < 0.5 ? -1 : 1)

/** Applies `change` to each value of the axes given. */
function onAxes(
  log: BoardLog,
  axes: readonly number[],
  change: (value: number, row: number) => number,
) {
  for (let row = 0; row < rowCount(log); row++) {
    for (const axis of axes)
      log.values[AXES * row + axis] = change(log.values[AXES * row + axis]!, row)
  }
}

const ALL = [0, 1, 2, 3, 4, 5]
const ACCEL = [0, 1, 2]
const GYRO = [3, 4, 5]
const signed = (value: number) => ((value & 0xffff) << 16) >> 16

/** Keeps the rows that `keep` says, with their times. */
function keepRows(log: BoardLog, rows: readonly number[]): void {
  const values = new Float64Array(AXES * rows.length)
  for (const [i, row] of rows.entries()) {
    values.set(log.values.subarray(AXES * row, AXES * (row + 1)), AXES * i)
  }
  log.values = values
  if (log.tMs !== null) log.tMs = Float64Array.from(rows, (row) => log.tMs![row]!)
}

const wires: Fault[] = [
  { name: 'no-data', expected: 'no-data', log: (log) => keepRows(log, []) },
  { name: 'all-zero', expected: 'all-zero', log: (log) => log.values.fill(0) },
  {
    name: 'all-ones',
    expected: 'all-ones',
    needs: { units: 'count' },
    log: (log) => log.values.fill(-1),
  },
  {
    name: 'loose-wire',
    expected: 'dead-rows',
    needs: { units: 'count' },
    run: (random) => {
      const share = random.uniform(0.001, 0.1)
      const value = pick(random, [0, -1])
      return (log) => {
        for (let row = 0; row < rowCount(log); row++) {
          if (random.next() < share) log.values.fill(value, AXES * row, AXES * (row + 1))
        }
      }
    },
  },
  {
    name: 'one-axis-frozen',
    expected: 'frozen',
    run: (random) => {
      const axis = random.integer(AXES)
      const value = random.next() < 0.5 ? 0 : Math.round(random.uniform(-3000, 3000))
      return (log) => onAxes(log, [axis], () => value)
    },
  },
  {
    name: 'one-sensor-asleep',
    expected: 'frozen',
    run: (random) => {
      const axes = pick(random, [ACCEL, GYRO])
      return (log) => onAxes(log, axes, () => 0)
    },
  },
]

const words: Fault[] = [
  {
    name: 'bytes-swapped',
    expected: 'byte-order',
    needs: { units: 'count' },
    run: (random) => {
      const axes = pick(random, [ALL, ACCEL, GYRO])
      return (log) => onAxes(log, axes, (v) => signed(((v & 0xff) << 8) | ((v >> 8) & 0xff)))
    },
  },
  {
    name: 'printed-unsigned',
    expected: 'number-format',
    needs: { units: 'count' },
    run: (random) => {
      const axes = pick(random, [ALL, ACCEL, GYRO])
      return (log) => onAxes(log, axes, (v) => v & 0xffff)
    },
  },
  {
    name: 'offset-binary',
    expected: 'number-format',
    needs: { units: 'count' },
    run: (random) => {
      const axes = pick(random, [ALL, ACCEL, GYRO])
      return (log) => onAxes(log, axes, (v) => signed(v ^ 0x8000))
    },
  },
]

function lose(log: BoardLog, share: number, random: Random): void {
  const rows: number[] = []
  for (let row = 0; row < rowCount(log); row++) {
    if (row === 0 || random.next() >= share) rows.push(row)
  }
  keepRows(log, rows)
}

const times: Fault[] = [
  {
    name: 'polled-too-fast',
    expected: 'repeated',
    run: (random) => {
      const share = random.uniform(0.35, 0.8)
      return (log) => {
        for (let row = 1; row < rowCount(log); row++) {
          if (random.next() >= share) continue
          log.values.copyWithin(AXES * row, AXES * (row - 1), AXES * row)
        }
      }
    },
  },
  {
    name: 'samples-doubled',
    expected: 'doubled',
    run: (random) => {
      const share = random.uniform(0.03, 0.12)
      return (log) => {
        const rows = Array.from({ length: rowCount(log) }, (_, row) => row)
        keepRows(
          log,
          rows.flatMap((row) => (random.next() < share ? [row, row] : [row])),
        )
      }
    },
  },
  {
    name: 'samples-dropped',
    expected: 'dropped',
    needs: { timed: true },
    run: (random) => {
      const share = random.uniform(0.006, 0.2)
      return (log) => lose(log, share, random)
    },
  },
  {
    name: 'rate-off',
    expected: 'rate-off',
    needs: { timed: true },
    sensor: (sensor, random) => {
      // On top of an oscillator that may be 3 % off already, so that 5 % is passed in any case.
      const factor = random.uniform(1.09, 2)
      sensor.rateHz *= random.next() < 0.5 ? factor : 1 / factor
    },
  },
]

const scales: Fault[] = [
  {
    name: 'accelerometer-range',
    expected: 'accel-scale',
    run: (random) => {
      const factor = pick(random, [1 / 8, 1 / 4, 1 / 2, 2, 4])
      return (log) => onAxes(log, ACCEL, (v) => scaled(log, v, factor))
    },
  },
  {
    name: 'accelerometer-unit',
    expected: 'accel-unit',
    needs: { units: 'si' },
    run: (random) => {
      const factor = pick(random, [9.80665, 1000])
      return (log) => onAxes(log, ACCEL, (v) => v * factor)
    },
  },
  {
    name: 'gyroscope-range',
    expected: 'gyro-scale',
    run: (random) => {
      const factor = pick(random, [1 / 8, 1 / 4, 1 / 2, 2, 4])
      return (log) => onAxes(log, GYRO, (v) => scaled(log, v, factor))
    },
  },
  {
    name: 'gyroscope-family',
    expected: 'gyro-scale',
    // Without times the rate, 3 % off, is in the factor too, and 14.7 % cannot be told for sure.
    needs: { timed: true },
    run: (random) => {
      const factor = pick(random, [1.14688, 1 / 1.14688])
      return (log) => onAxes(log, GYRO, (v) => scaled(log, v, factor))
    },
  },
  {
    name: 'gyroscope-unit',
    expected: 'gyro-unit',
    needs: { units: 'si' },
    run: (random) => {
      const factor = pick(random, [Math.PI / 180, 1000])
      return (log) => onAxes(log, GYRO, (v) => v * factor)
    },
  },
]

/** Counts stay whole and within their 16 bits. */
function scaled(log: BoardLog, value: number, factor: number): number {
  if (log.accelUnit !== 'count') return value * factor
  return Math.max(-32768, Math.min(32767, Math.round(value * factor)))
}

function turnAxes(log: BoardLog, m: Matrix3, first: number): void {
  for (let row = 0; row < rowCount(log); row++) {
    const at = AXES * row + first
    const [x, y, z] = log.values.subarray(at, at + 3)
    for (let i = 0; i < 3; i++) {
      log.values[at + i] = m[3 * i]! * x! + m[3 * i + 1]! * y! + m[3 * i + 2]! * z!
    }
  }
}

function drawSignedAxes(random: Random, mirrored: boolean): Matrix3 {
  const order = pick<readonly number[]>(random, AXIS_ORDERS)
  const m: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0]
  for (const [row, column] of order.entries()) m[3 * row + column] = sign(random)
  if (determinant(m) < 0 !== mirrored) for (let i = 0; i < 3; i++) m[i] = -m[i]!
  const plain = m[0] === 1 && m[4] === 1 && m[8] === 1
  return plain ? drawSignedAxes(random, mirrored) : m
}

const axes: Fault[] = [
  {
    name: 'axes-exchanged',
    expected: 'axes-turned',
    run: (random) => {
      const m = drawSignedAxes(random, false)
      return (log) => {
        for (const first of [0, 3]) turnAxes(log, m, first)
      }
    },
  },
  {
    name: 'axes-mirrored',
    expected: 'axes-mirrored',
    run: (random) => {
      const m = drawSignedAxes(random, true)
      return (log) => {
        for (const first of [0, 3]) turnAxes(log, m, first)
      }
    },
  },
  {
    name: 'axes-of-one-sensor-only',
    expected: 'axes-differ',
    run: (random) => {
      const m = drawSignedAxes(random, random.next() < 0.5)
      const first = pick(random, [0, 3])
      return (log) => turnAxes(log, m, first)
    },
  },
]

const quality: Fault[] = [
  {
    name: 'accelerometer-offset',
    expected: 'accel-offset',
    sensor: (sensor, random) => {
      sensor.accelZeroG[random.integer(3)] = sign(random) * random.uniform(0.14, 0.5)
    },
  },
  {
    name: 'gyroscope-offset',
    expected: 'gyro-offset',
    sensor: (sensor, random) => {
      sensor.gyroZeroDps[random.integer(3)] = sign(random) * random.uniform(35, 150)
    },
  },
  {
    name: 'accelerometer-noise',
    expected: 'accel-noise',
    sensor: (sensor, random) => {
      sensor.accelNoiseG = random.uniform(2e-3, 20e-3) * Math.sqrt(sensor.rateHz / 2)
    },
  },
  {
    name: 'gyroscope-noise',
    expected: 'gyro-noise',
    sensor: (sensor, random) => {
      sensor.gyroNoiseDps = random.uniform(0.035, 0.5) * Math.sqrt(sensor.rateHz / 2)
    },
  },
  {
    name: 'tone-coupled-in',
    expected: 'hum',
    disturb: (sensor, random) => {
      const axis = random.integer(AXES)
      const noise = axis < 3 ? sensor.accelNoiseG : sensor.gyroNoiseDps
      const least = axis < 3 ? 0.003 : 0.15
      const amplitude = random.uniform(2, 30) * Math.max(noise, least)
      const hz = drawToneHz(sensor.rateHz, random)
      const square = random.next() < 0.3
      return (row, timeS) => {
        const wave = Math.sin(2 * Math.PI * hz * timeS)
        row[axis]! += amplitude * (square ? Math.sign(wave) : wave)
      }
    },
  },
  {
    name: 'range-too-small',
    expected: 'clipped',
    disturb: (_sensor, random) => {
      const isAccel = random.next() < 0.5
      const limit = isAccel ? random.uniform(1.55, 1.9) : random.uniform(70, 120)
      const list = isAccel ? ACCEL : GYRO
      return (row) => {
        for (const axis of list) row[axis] = Math.max(-limit, Math.min(limit, row[axis]!))
      }
    },
  },
]

/** Mains or any PWM, but not one that folds to nearly nothing: that is an offset. */
function drawToneHz(rateHz: number, random: Random): number {
  const hz = random.next() < 0.5 ? pick(random, [50, 60, 100, 120]) : random.uniform(5, 2000)
  const within = hz % rateHz
  const folded = Math.min(within, rateHz - within)
  return folded > 2.5 && folded < rateHz / 2 - 1 ? hz : drawToneHz(rateHz, random)
}

export const FAULTS: readonly Fault[] = [
  ...wires,
  ...words,
  ...times,
  ...scales,
  ...axes,
  ...quality,
]

/** Puts a fault into what was printed. */
export function spoil(parts: readonly BenchPart[], fault: Fault, random: Random): void {
  const change = fault.run?.(random)
  for (const { log } of parts) {
    fault.log?.(log, random)
    change?.(log)
  }
}
