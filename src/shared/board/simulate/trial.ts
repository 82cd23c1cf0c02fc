import type { Target } from '../../model/target'
import { createRandom, type Random } from '../../statistics/random'
import { defaultTarget } from '../../target/default-target'
import { TARGET_PRESETS } from '../../target/presets'
import { checkBoard } from '../check/check-board'
import type { Finding } from '../check/finding'
import type { BenchPart } from '../check/steps'
import { type Fault, spoil } from './faults'
import { type LogStyle, logOf } from './log-of'
import { drawRoutine } from './routine'
import { drawSensor } from './sensor'

/** One board at the bench: a target, a routine by hand, a sensor and, unless sound, one fault. */
export interface Trial {
  target: Target
  style: LogStyle
  parts: BenchPart[]
}

const pick = <T>(random: Random, list: readonly T[]): T => list[random.integer(list.length)]!

/** Ranges that a firm shake stays within, at 26 to 208 Hz, of both families. */
function drawTarget(random: Random): Target {
  const family = pick(random, TARGET_PRESETS)
  const rates = family.ratesHz.filter((rate) => rate >= 25 && rate <= 208)
  return {
    ...defaultTarget(),
    preset: family.key,
    accel: pick(random, family.accelRanges.slice(1)),
    gyro: pick(random, family.gyroRanges.slice(2)),
    rateHz: pick(random, rates),
  }
}

/** Draws a board; the same seed gives the same logs. @param fault null for a sound board */
export function drawTrial(seed: number, fault: Fault | null): Trial {
  const random = createRandom(seed)
  const target = drawTarget(random)
  const style: LogStyle = {
    units: random.next() < 0.7 ? 'count' : 'si',
    timed: random.next() < 0.7,
    ...fault?.needs,
  }
  return { target, style, parts: simulateBench(target, style, fault, random) }
}

/** The whole routine with one simulated sensor of a target's setting. */
export function simulateBench(
  target: Target,
  style: LogStyle,
  fault: Fault | null,
  random: Random,
): BenchPart[] {
  const sensor = drawSensor(random, target)
  fault?.sensor?.(sensor, random)
  const disturb = fault?.disturb?.(sensor, random)
  const parts = logOf(drawRoutine(random.fork()), sensor, target, style, random, disturb)
  if (fault !== null) spoil(parts, fault, random.fork())
  return parts
}

export function findingsOf({ parts, target }: Trial): Finding[] {
  return checkBoard(parts, target).findings
}
