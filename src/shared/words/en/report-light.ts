import type { LightKind, PowerSetup } from '../../model/light'

/** What the report says of effects, flashes and cells. */
export const REPORT_LIGHT = {
  title: 'Effects and safety',
  caption:
    'Flashes in any second, alone and in turn with every other answer as fast as they are taken; three are the limit of each. A calculation, and no claim of compliance.',
  leastTime: 'Least time between changes',
  pulseWidth: 'PWM',
  pwm: (pwmHz: number, bits: number) => `${pwmHz} Hz, ${bits} bits`,
  cells: 'Cells',
  onPurpose: 'Over a limit on purpose',
  nothingAcknowledged: 'nothing acknowledged',
  cellNotCounted: 'not counted',
  heads: [
    'Answer',
    'effect',
    'rounds',
    'sound, vibration',
    'general flashes',
    'red flashes',
    'bare LED',
  ],
  notCounted: 'Flashes were not counted.',
  criteria:
    'General and red flashes: WCAG 2.2, success criterion 2.3.1, on the light as a screen of full luminance. Bare LED: criterion 2.3.2, counted more strictly.',
  overLimit: (flashes: number) => `${flashes}, over the limit`,
  /** @param rounds 0 for on and on */
  rounds: (rounds: number, each: string) => `${rounds === 0 ? 'on and on' : `${rounds} ×`} ${each}`,
  none: 'none',
  effects: {
    off: 'none',
    steady: 'steady',
    breathe: 'breathe',
    flicker: 'flicker',
    sparkle: 'sparkle',
    hue: 'hues',
    keys: 'keyframes',
  } satisfies Record<LightKind, string>,
  /** Cells and what is between them and the LED. */
  fed: (series: number, cell: string, supply: PowerSetup['supply']) =>
    `${series} × ${cell}, ${supply === 'direct' ? 'direct' : 'through a boost converter'}`,
  custom: 'cells of own figures',
}
