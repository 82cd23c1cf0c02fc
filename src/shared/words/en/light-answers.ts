import { shortNumber } from './numbers'

/** On the screens of the prop's light: all answers, what is over a limit, the light full screen. */
export const LIGHT_ANSWERS = {
  title: 'Light',
  noLibrary: 'Light belongs to the gestures of a library, and none is open.',
  toMoves: 'Go to Moves',
  gestures: 'Gestures',
  otherwise: 'Otherwise',
  leastChange: 'Least time between two changes of light',
  leastChangeHint:
    'A gesture that comes sooner waits so long. 600 keeps quick hands from flashing.',
  behindIt: 'Behind it',
  led: 'LED and its drive',
  ledHint: 'PWM, forward voltages, resistors, current limit',
  cells: 'Cells',
  cellsHint: 'How long they last, and what they cannot feed',
  lightOf: (answer: string) => `Light of ${answer} over time`,
  limit: {
    title: 'Over a limit',
    counting: 'Counting flashes of all effects …',
    none: 'No effect and no chain is over a limit for flashes or flicker.',
    acknowledged: (on: string, text: string) =>
      `Acknowledged ${on}: “${text}” It stands in the exported files.`,
    withdraw: 'Withdraw it',
    why: 'The firmware is not exported like this, unless you write down why this light may be shown. Your words go into the exported files.',
    whoSees: 'Who sees it, and how they are kept safe',
    acknowledge: 'Acknowledge in writing',
  },
  air: {
    trail: 'Trail of the tip in the air',
    dashes: (of: { peakMps: number; pwmHz: number; spacingMm: number; litMm: number }) =>
      `If the answer played while the newest take moved, at up to ${shortNumber(of.peakMps)} m/s: PWM at ${of.pwmHz} Hz draws dashes ${shortNumber(of.spacingMm)} mm apart, at half duty ${shortNumber(of.litMm)} mm lit.`,
  },
  lamp: {
    shownSlower: 'What is over three flashes a second is shown slower here.',
    show: 'Show the light',
    slowed: (pace: number) => ({
      strong: `Shown at ${shortNumber(pace)} of its speed:`,
      after: 'at full speed it is over three flashes a second.',
    }),
    pwm: (pwmHz: number, pwmBits: number) =>
      `PWM ${pwmHz} Hz, ${pwmBits} bits, as the board counts.`,
    again: 'Answer again',
    words: 'Words',
    close: 'Close',
    notShown:
      'The light is not shown here: it is over three flashes a second. Mend it on Prop, Light.',
    lightOfProp: 'Light of the prop',
  },
  warning: {
    label: 'Flashing light',
    title: 'Light that changes',
    seizures:
      'The screen becomes the light, bright and changing. In some people flashes bring on seizures, also in those who never had one (about one in 4000 to 6000 people). Look away and stop at dizziness, twitching or a strange feeling; do not show it to people who do not expect it.',
    onceAVisit: 'Asked once a visit. Do not stare into bright LEDs either.',
    back: 'Back',
  },
}
