import type { Spread } from '../../model/light'
import type { EmitterName } from '../../power/headroom'
import { EMITTER_WORDS } from './emitter-words'

const CURRENTS = {
  capacity: 'capacity',
  processor: 'processor’s current',
  sensor: 'sensor’s current',
  standby: 'standby current',
  off: 'current while switched off',
}

const disorder = (what: string, { min, typ, max }: Spread) =>
  `The ${what} must rise from least to most, and is ${min}, ${typ}, ${max}: put it in order.`

/** What is wrong with the cells, what draws on them, or the drive of the LED. */
export const POWER_TROUBLE = {
  noCapacity: 'Cells of 0 mAh feed nothing: enter the capacity of one cell.',
  noCell: 'There is at least one cell: enter how many are in series.',
  volts: ({ freshV, nominalV, endV }: { freshV: number; nominalV: number; endV: number }) =>
    `A cell falls from fresh (${freshV} V) through nominal (${nominalV} V) to empty (${endV} V): enter them in this order.`,
  converter: (volts: number) =>
    `The converter gives ${volts} V, which the cells have themselves: raise it or leave it out.`,
  noPwm: 'PWM of 0 Hz is no PWM: enter its frequency in Hz.',
  timer: ({ clockHz, pwmBits, mostHz }: { clockHz: number; pwmBits: number; mostHz: number }) =>
    `A clock of ${clockHz / 1e6} MHz counts ${pwmBits} bits at most ${mostHz} times a second: lower the frequency or the bits.`,
  staysDark: (emitter: EmitterName, needsV: number, hasV: number) =>
    `${EMITTER_WORDS[emitter]} needs ${needsV} V and the supply gives ${hasV.toFixed(1)} V even when fresh: it stays dark. Take more cells or a converter.`,
  noCurrent: (emitter: EmitterName) =>
    `The current of ${EMITTER_WORDS[emitter]} must be above 0 mA.`,
  loadOrder: (what: keyof typeof CURRENTS, spread: Spread) => disorder(CURRENTS[what], spread),
  forwardOrder: (emitter: EmitterName, spread: Spread) =>
    disorder(`forward voltage of ${EMITTER_WORDS[emitter]}`, spread),
}
