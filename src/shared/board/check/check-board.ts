import type { Target } from '../../model/target'
import { checkAccelScale } from './accel-scale'
import { BenchLog } from './bench-log'
import { checkClipping } from './clipping'
import type { CheckResult, Finding, Passed } from './finding'
import { checkGyroAndAxes } from './gyro-and-axes'
import { checkNoise } from './noise'
import { checkAccelOffset, checkGyroOffset } from './offsets'
import { readFaces } from './poses'
import { checkFrozen, checkRepeats } from './repeats'
import { checkDeadRows, checkSilence } from './silence'
import type { BenchPart } from './steps'
import { checkTiming } from './timing'
import { checkWords } from './words'

/**
 * Suspects in order: first that anything comes, then that words are read right, then time, scale,
 * axes, and only then what a sound sensor may do badly. A finding that spoils what would be asked
 * next ends the questioning; a wrong scale is corrected for, so that it is named once.
 */
export function checkBoard(parts: readonly BenchPart[], target: Target): CheckResult {
  const bench = new BenchLog(parts, target)
  const silent = checkSilence(bench)
  if (silent !== null) return { findings: [silent], passed: [] }
  const words = checkDeadRows(bench) ?? checkWords(bench)
  if (words !== null) return { findings: [words], passed: [] }
  const frozen = checkFrozen(bench)
  const repeats = checkRepeats(bench)
  const timing = checkTiming(bench)
  bench.unevenRows = repeats !== null || timing.some(({ code }) => code === 'dropped')
  const findings: (Finding | null)[] = [frozen, repeats, ...timing]
  const accelMoves = !bench.sensorFrozen('accel')
  if (accelMoves) findings.push(checkAccelScale(bench))
  // Copied rows look like flat tops; and a clipped turn has no angle, so clipping is asked before it.
  const clipping = repeats === null ? checkClipping(bench) : null
  if (accelMoves) findings.push(...checkGyroAndAxes(bench), checkAccelOffset(bench))
  if (!bench.sensorFrozen('gyro')) findings.push(checkGyroOffset(bench))
  findings.push(...checkNoise(bench), clipping)
  const found = findings.filter((finding) => finding !== null)
  return { findings: found, passed: passedOf(bench, found) }
}

interface Question {
  what: string
  codes: string[]
  /** Why it could not be asked; null when it could. */
  missing: string | null
}

function passedOf(bench: BenchLog, findings: readonly Finding[]): Passed[] {
  const found = new Set<string>(findings.map(({ code }) => code))
  return questions(bench)
    .filter(({ codes }) => !codes.some((code) => found.has(code)))
    .map(({ what, missing }) => ({ what, notChecked: missing }))
}

function questions(bench: BenchLog): Question[] {
  const timed = bench.parts.some(({ log }) => log.tMs !== null)
  const ownClock = bench.parts.some(({ log }) => log.tMs !== null && log.clock === 'board')
  const faces = readFaces(bench) !== null
  const turns = (['turn-x', 'turn-y', 'turn-z'] as const).every((step) => bench.part(step) !== null)
  const moved = bench.moved().length > 0
  const still = bench.part('still') !== null
  const unless = (known: boolean, why: string) => (known ? null : why)
  const gyro = bench.hasGyro ? null : 'the log has no gyroscope'
  return [
    {
      what: 'Words, bytes and signs',
      codes: [],
      missing: unless(bench.isCounts, 'the log is not in counts'),
    },
    {
      what: 'Every axis moves',
      codes: ['frozen'],
      missing: unless(moved, 'the board was not moved'),
    },
    {
      what: 'Every sample is new',
      codes: ['repeated', 'doubled'],
      missing: unless(moved, 'the board was not moved'),
    },
    {
      what: 'Rate',
      codes: ['rate-off', 'rate-mixed', 'time-backwards'],
      missing: unless(timed, 'the log has no times'),
    },
    {
      what: 'No sample is missing',
      codes: ['dropped', 'time-backwards'],
      missing: unless(ownClock, 'the log has no times of the board’s own clock'),
    },
    {
      what: 'Scale of the accelerometer',
      codes: ['accel-scale', 'accel-unit'],
      missing: unless(faces || still, 'no pose was logged'),
    },
    {
      what: 'Scale of the gyroscope',
      codes: ['gyro-scale', 'gyro-unit'],
      missing: gyro ?? unless(turns, 'the three turns are not all there'),
    },
    {
      what: 'Axes and handedness',
      codes: ['axes-mirrored', 'axes-turned', 'axes-differ', 'faces-unclear'],
      missing: unless(faces, 'the six faces are not all there'),
    },
    {
      what: 'Zero of the accelerometer',
      codes: ['accel-offset'],
      missing: unless(faces, 'the six faces are not all there'),
    },
    {
      what: 'Zero of the gyroscope',
      codes: ['gyro-offset'],
      missing: gyro ?? unless(still, 'it was not logged at rest'),
    },
    {
      what: 'Noise and hum',
      codes: ['hum', 'accel-noise', 'gyro-noise'],
      missing: unless(still, 'it was not logged at rest'),
    },
    {
      what: 'Range',
      codes: ['clipped'],
      missing: unless(bench.part('shake') !== null, 'no shake was logged'),
    },
  ]
}
