import type { Spread } from '../../model/light'
import { shortNumber } from './numbers'

/** On the screens of the LED and of the cells that feed it. */
export const LIGHT_POWER = {
  spread: {
    min: 'least',
    typ: 'typical',
    max: 'most',
    quantity: 'quantity',
    unit: 'unit',
    ohm: 'ohm',
    ofUnit: (label: string, unit: string) => `${label}, ${unit}`,
  },
  cells: {
    title: 'Cells',
    draws: 'What draws on them',
    mind: 'Mind',
    lasting: 'How long they last',
    estimated:
      'Estimated: LED from the effects as they play, currents as entered below. Measure your board before you promise hours.',
    headroom: 'Current of the LED over the cells’ life',
    enough: 'Every colour has headroom until the cells are empty.',
    alternative: (name: string, freshMa: readonly number[], emptyMa: readonly number[]) =>
      `With ${name}: ${currents(freshMa)} mA from fresh cells, ${currents(emptyMa)} mA from empty ones.`,
    takeIt: 'Take it, with resistors',
    falls: (of: { from: number; to: number; answersPerHour: number }) =>
      `Runtime falls from ${of.from} to ${of.to} hours as answers rise to ${of.answersPerHour} an hour`,
    axes: 'hours, against answers an hour',
    fromMemory: (source: string) => `From memory: ${source.replace('from memory; ', '')}`,
    kind: 'Kind',
    otherKind: 'Other, from its data sheet',
    sources: (capacity: string, others: string) =>
      `Capacity: ${capacity}. Voltages, resistance, self-discharge: ${others}.`,
    inSeries: 'Cells in series',
    capacity: 'Capacity of one cell',
    supply: 'Between cells and LED',
    nothing: 'Nothing',
    boost: 'Boost converter',
    fresh: 'Fresh',
    nominal: 'Nominal',
    empty: 'Empty',
    inside: 'Inside',
    madeFor: 'Made for',
    lostAYear: 'Lost a year',
    gives: 'Gives',
    efficiency: 'Efficiency',
    perHour: 'Gestures answered in an hour',
    processor: 'Processor, on average',
    sensor: 'Motion sensor',
    standby: 'LED driver, regulator and the rest',
    off: 'While switched off',
    loadsFromMemory:
      'From memory of common parts until you enter your own: an addressable LED alone can draw 1 mA while dark.',
  },
  led: {
    title: 'LED and its drive',
    together: 'Together',
    limit: 'Limit of all colours together',
    limitHint: '0 for none. Above it all three are dimmed alike, by the player itself.',
    driver: 'Switch and driver, in series with each LED',
    eyes: 'Bright LEDs: do not stare into them, and use a diffuser. How they class under IEC 62471 is for a laboratory to say.',
    dimming: 'Dimming',
    pwm: 'PWM',
    timer: 'Timer',
    bits: 'bits',
    setHz: (hz: number) => `Set ${hz} Hz`,
    emitters: { red: 'Red', green: 'Green', blue: 'Blue' },
    forwardVoltage: 'Forward voltage at its current',
    generic: (forwardV: Spread, typical: string, limits: string) =>
      `Typical ${forwardV.typ} V: ${typical}. Limits ${forwardV.min} and ${forwardV.max} V: ${limits}.`,
    current: 'Current at full',
    resistor: 'Resistor',
    standard: (ohm: number, e24: number, e12: number) =>
      `From fresh cells ${shortNumber(ohm)} ohm; next standard value ${shortNumber(e24)} (E24), ${shortNumber(e12)} (E12).`,
    take: (ohm: number) => `Take ${shortNumber(ohm)} ohm`,
  },
}

/** @param ma of red, green and blue */
function currents(ma: readonly number[]): string {
  return ['red', 'green', 'blue'].map((name, i) => `${name} ${shortNumber(ma[i] ?? 0)}`).join(', ')
}
