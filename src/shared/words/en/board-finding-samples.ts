import type { FindingWords } from '../../board/check/finding'

/** Axes that never change. */
interface Frozen {
  rows: number
  /** Names of the axes, and the value each keeps. */
  axes: { name: string; value: number }[]
  which: 'all' | 'one-sensor' | 'some'
}

const copies = (share: number, rows: number) =>
  `${(100 * share).toFixed(1)} % of ${rows} rows in motion are exact copies of the row before.`

/** What the board check says of samples that stand still, come twice, late or not at all. */
export const BOARD_SAMPLES = {
  frozen: ({ rows, axes, which }: Frozen): FindingWords => ({
    title:
      which === 'all'
        ? 'The readings never change'
        : `${axes.map(({ name }) => name).join(', ')} never changes`,
    seen: `Over ${rows} rows ${which === 'all' ? 'every axis keeps its value' : axes.map(({ name, value }) => `${name} stays at ${value}`).join(', ')}, to the last digit. Even at rest noise moves a reading.`,
    causes:
      which === 'all'
        ? [
            'The driver reads once and prints the same buffer again.',
            'Data-ready never comes, so that no new sample is fetched.',
            'The buffer of the sensor is full and stopped: its mode is stop-on-full.',
          ]
        : [
            which === 'one-sensor'
              ? 'This sensor is in power-down: its own rate setting is zero.'
              : 'The registers of this axis are not read: a wrong address or a copy error.',
            'The axis is switched off in the control register.',
            'The element is damaged, such as by a drop or by ultrasonic cleaning.',
          ],
    next: [
      'Read back the control registers and compare them with the data sheet, bit by bit.',
      'Look at the data-ready line with a scope: does it pulse at the output data rate?',
      'Use the self-test of the sensor: the reading must move by the amount printed.',
    ],
  }),
  repeated: (share: number, rows: number): FindingWords => ({
    title: 'The same sample is read again and again',
    seen: copies(share, rows),
    causes: [
      'The firmware reads faster than the sensor measures.',
      'The output data rate is set lower than meant.',
      'Reading does not wait for data-ready, and the sensor holds its registers.',
    ],
    next: [
      'Compare the rate of data-ready pulses on the scope with the rate of reads on the bus.',
      'Read on data-ready, or check the new-data bit before each read.',
    ],
  }),
  doubled: (share: number, rows: number): FindingWords => ({
    title: 'Some samples come twice',
    seen: copies(share, rows),
    causes: [
      'A timer of the controller reads at nearly the same rate as the sensor measures, and the two drift past each other.',
      'The buffer is read one entry beyond its level.',
      'A read is repeated after a bus error and both are kept.',
    ],
    next: [
      'Read on data-ready instead of on a timer.',
      'Count samples and data-ready pulses over ten seconds: they must be equal.',
    ],
  }),
  timeBackwards: (row: number, byMs: number): FindingWords => ({
    title: 'Time goes backwards',
    seen: `Row ${row} stands ${byMs.toFixed(1)} ms before row ${row - 1}.`,
    causes: [
      'The counter of the time stamp is narrower than it is printed and began anew.',
      'The board was reset while it logged.',
      'Rows come from two buffers and are printed in the wrong order, or the log was sorted.',
    ],
    next: [
      'Look whether the step is a power of two in the counter’s own unit: 65536, 16777216.',
      'Print a line at start-up, so that a reset can be seen.',
    ],
  }),
  rateMixed: (slowHz: number, fastHz: number): FindingWords => ({
    title: 'The rate changes',
    seen: `Samples come at ${slowHz.toFixed(1)} Hz in one stretch and at ${fastHz.toFixed(1)} Hz in another.`,
    causes: [
      'Something else keeps the firmware busy: printing, a radio, the light.',
      'Logs made with different settings are mixed.',
      'The sensor changes between its power modes by itself.',
    ],
    next: [
      'Set a pin while the firmware reads and look at it with a scope, together with data-ready.',
      'Raise the baud rate: a row of 60 characters takes 5.2 ms at 115200 baud.',
    ],
  }),
  rateOff: (rateHz: number, wantedHz: number): FindingWords => {
    const off = 100 * (rateHz / wantedHz - 1)
    return {
      title: `The rate is ${Math.abs(off).toFixed(1)} % off`,
      seen: `Samples come at ${rateHz.toFixed(2)} Hz, the target says ${wantedHz} Hz: ${Math.abs(off).toFixed(1)} % ${off > 0 ? 'faster' : 'slower'}. The recogniser bears 5 %.`,
      causes: [
        'Another output data rate is set: neighbours in the table differ by a factor of 2.',
        'The divider counts from 0: rate = base / (1 + divider).',
        off < 0
          ? 'Printing takes longer than a sample lasts, so that samples are skipped.'
          : 'The rate of the accelerometer differs from that of the gyroscope.',
        'The oscillator of the part is off; some per cent are usual, more is not.',
      ],
      next: [
        'Measure the frequency of data-ready with a counter or a scope.',
        'If the rate is meant, set the target to the measured rate and train again.',
      ],
    }
  },
  dropped: (missing: number, share: number, gap: number): FindingWords => ({
    title: 'Samples are missing',
    seen: `${missing} samples (${(100 * share).toFixed(2)} %) are missing: time steps of ${gap} usual ones and more.`,
    causes: [
      'The buffer of the sensor overflows before it is read.',
      'Printing blocks: the transmit buffer is full.',
      'An interrupt is missed while another one runs.',
    ],
    next: [
      'Read the overrun bit of the sensor’s buffer after each read.',
      'Compare bytes a second with the baud rate: ten bits a byte.',
      'Toggle a pin for each read and look for the gap with a scope: what runs there?',
    ],
  }),
}
