import { PART_NAMES } from '../words/en/part-names'
import type { CoreKind } from './costs'

/** A kind of microcontroller, generic: no maker's part. */
export interface Part {
  key: string
  name: string
  /** Whose measured costs it takes. */
  core: CoreKind
  /** Whether it is that core, or only resembles it (M4F, M33 as M3). */
  resembles: boolean
  clockHz: number
  flashBytes: number
  ramBytes: number
  /**
   * Cycles an instruction takes on average, flash wait states included: from memory of data sheets, to
   * be measured on the board. 1 where costs are counted in cycles.
   */
  cyclesPerInstruction: number
  /** Typical currents while computing and while it waits for the sensor, mA; from memory. */
  activeMa: number
  waitingMa: number
}

const KB = 1024

export const PARTS: readonly Part[] = [
  part('avr-32', PART_NAMES.avr32, 'avr', 16, [32, 2], 1, [10, 0.01]),
  part('avr-128', PART_NAMES.avr128, 'avr', 16, [128, 16], 1, [12, 0.01]),
  part('m0-32', PART_NAMES.m032, 'm0', 32, [32, 4], 1.5, [3.5, 0.005]),
  part('m0-64', PART_NAMES.m064, 'm0', 48, [64, 8], 1.7, [5, 0.005]),
  part('m0-256', PART_NAMES.m0256, 'm0', 48, [256, 32], 1.7, [5, 0.005]),
  part('m4f-256', PART_NAMES.m4f256, 'm3', 64, [256, 64], 1.5, [5, 0.005], true),
  part('m33-512', PART_NAMES.m33512, 'm3', 100, [512, 128], 1.4, [6, 0.01], true),
]

function part(
  key: string,
  name: string,
  core: CoreKind,
  megahertz: number,
  [flashKb, ramKb]: [number, number],
  cyclesPerInstruction: number,
  [activeMa, waitingMa]: [number, number],
  resembles = false,
): Part {
  return {
    key,
    name,
    core,
    resembles,
    clockHz: megahertz * 1e6,
    flashBytes: flashKb * KB,
    ramBytes: ramKb * KB,
    cyclesPerInstruction,
    activeMa,
    waitingMa,
  }
}

/** The smallest preset with the target's clock and memory, changed to have exactly those. */
export function partOfTarget(target: {
  clockHz: number
  flashBytes: number
  ramBytes: number
}): Part {
  const core: CoreKind = target.clockHz <= 20e6 ? 'avr' : target.clockHz <= 48e6 ? 'm0' : 'm3'
  const like = PARTS.filter((one) => one.core === core)
  const nearest = like.find((one) => one.flashBytes >= target.flashBytes) ?? like[like.length - 1]!
  const { clockHz, flashBytes, ramBytes } = target
  return {
    ...nearest,
    key: 'target',
    name: PART_NAMES.asTheTarget,
    clockHz,
    flashBytes,
    ramBytes,
  }
}
