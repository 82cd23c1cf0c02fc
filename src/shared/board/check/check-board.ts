import type { Target } from '../../model/target'
import { BOARD_QUESTIONS } from '../../words/en/board-questions'
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
  const gyro = bench.hasGyro ? null : BOARD_QUESTIONS.noGyro
  return [
    {
      what: BOARD_QUESTIONS.words,
      codes: [],
      missing: unless(bench.isCounts, BOARD_QUESTIONS.notCounts),
    },
    {
      what: BOARD_QUESTIONS.everyAxis,
      codes: ['frozen'],
      missing: unless(moved, BOARD_QUESTIONS.notMoved),
    },
    {
      what: BOARD_QUESTIONS.everySample,
      codes: ['repeated', 'doubled'],
      missing: unless(moved, BOARD_QUESTIONS.notMoved),
    },
    {
      what: BOARD_QUESTIONS.rate,
      codes: ['rate-off', 'rate-mixed', 'time-backwards'],
      missing: unless(timed, BOARD_QUESTIONS.noTimes),
    },
    {
      what: BOARD_QUESTIONS.noneMissing,
      codes: ['dropped', 'time-backwards'],
      missing: unless(ownClock, BOARD_QUESTIONS.noTimesOfItsOwn),
    },
    {
      what: BOARD_QUESTIONS.accelScale,
      codes: ['accel-scale', 'accel-unit'],
      missing: unless(faces || still, BOARD_QUESTIONS.noPose),
    },
    {
      what: BOARD_QUESTIONS.gyroScale,
      codes: ['gyro-scale', 'gyro-unit'],
      missing: gyro ?? unless(turns, BOARD_QUESTIONS.turnsMissing),
    },
    {
      what: BOARD_QUESTIONS.axes,
      codes: ['axes-mirrored', 'axes-turned', 'axes-differ', 'faces-unclear'],
      missing: unless(faces, BOARD_QUESTIONS.facesMissing),
    },
    {
      what: BOARD_QUESTIONS.accelZero,
      codes: ['accel-offset'],
      missing: unless(faces, BOARD_QUESTIONS.facesMissing),
    },
    {
      what: BOARD_QUESTIONS.gyroZero,
      codes: ['gyro-offset'],
      missing: gyro ?? unless(still, BOARD_QUESTIONS.notAtRest),
    },
    {
      what: BOARD_QUESTIONS.noise,
      codes: ['hum', 'accel-noise', 'gyro-noise'],
      missing: unless(still, BOARD_QUESTIONS.notAtRest),
    },
    {
      what: BOARD_QUESTIONS.range,
      codes: ['clipped'],
      missing: unless(bench.part('shake') !== null, BOARD_QUESTIONS.noShake),
    },
  ]
}
