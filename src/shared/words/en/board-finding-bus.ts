import type { FindingWords } from '../../board/check/finding'

type SensorName = 'accelerometer' | 'gyroscope'

/** What the board check says of wires, bus and bytes. */
export const BOARD_BUS = {
  tooShort: (rows: number, fewest: number): FindingWords => ({
    title: 'Too few rows',
    seen: `The log has ${rows} ${rows === 1 ? 'row' : 'rows'}; nothing can be said from fewer than ${fewest}.`,
    causes: ['The log was ended early.', 'The board stopped after a few samples.'],
    next: [
      'Log for the seconds named in each step.',
      'Watch whether the board resets: does its first line come again?',
    ],
  }),
  deadRows: (dead: number, rows: number): FindingWords => ({
    title: 'The bus fails now and then',
    seen: `${dead} of ${rows} rows hold only zeros or only ones, the others do not.`,
    causes: [
      'A wire or a solder joint is loose: it opens when the board is moved.',
      'Reads are interrupted, or two tasks use the bus at once.',
      'Pull-ups are too weak for the length of the wires, or the clock is too fast.',
    ],
    next: [
      'Move the wires and press on the sensor while logging: when do the rows come?',
      'Check the return value of every read, and print it.',
      'Look at the rising edges of clock and data with a scope: they must be up within a third of a bit.',
    ],
  }),
  noData: {
    title: 'No data',
    seen: 'Not one reading came from the board.',
    causes: [
      'The board does not run, or waits for the sensor and hangs.',
      'The serial rate or the pins differ from what was chosen.',
      'The sensor does not acknowledge its address.',
    ],
    next: [
      'Measure the supply at the sensor, not at the regulator.',
      'Look at the transmit pin with a scope: the shortest pulse is one bit, so its length gives the baud rate.',
      'Scan the bus for addresses; try the other state of the address pin.',
    ],
  } satisfies FindingWords,
  allZero: {
    title: 'All words are zero',
    seen: 'Every value of every row is 0. A sensor at rest shows gravity and noise.',
    causes: [
      'The sensor is still in its power-down state: the rate was not set after reset.',
      'Reads start at a wrong register, or the data line is held low.',
      'The driver gives its buffer before the first read has ended.',
    ],
    next: [
      'Read the register that says who the sensor is: its fixed value proves bus and address.',
      'Read back the control register after writing it.',
      'Look at the data line with a scope: is it low while the sensor should drive it? Check for a solder bridge to ground.',
    ],
  } satisfies FindingWords,
  allOnes: {
    title: 'All words are ones',
    seen: 'Every value is −1 (0xFFFF): nobody drives the data line, the pull-up does.',
    causes: [
      'The sensor does not answer: wrong address, or chip select is not pulled low.',
      'No supply at the sensor, or an open solder joint on the data line.',
      'Pull-ups are missing or far too strong for the line.',
    ],
    next: [
      'Measure the supply at the sensor and the level of chip select and of the address pin.',
      'Look for the acknowledge bit: the ninth clock after the address must find the line low.',
      'Measure from the pad to the pin with an ohmmeter, board unpowered.',
    ],
  } satisfies FindingWords,
  bytesSwapped: (sensor: SensorName, jump: number, mended: number): FindingWords => ({
    title: 'Bytes are swapped',
    seen: `Readings of the ${sensor} jump by ${Math.round(jump)} counts from row to row; with the two bytes of each word exchanged by ${Math.round(mended)}.`,
    causes: [
      'Words are put together with the high byte first where the sensor sends the low byte first, or the other way round.',
      'A setting of the sensor for the order of bytes was changed.',
      'Reading starts one register too early or too late, so that halves of two words meet.',
    ],
    next: [
      'Compare the order of the low and high registers in the data sheet with the driver.',
      'Lay the board flat: the two bytes of z should make one of the counts for 1 g.',
    ],
  }),
  signMisread: (sensor: SensorName, meant: 'offset-binary' | 'unsigned'): FindingWords => ({
    title: 'Sign of the words is misread',
    seen: `Readings of the ${sensor} jump between the two ends of 16 bits: ${meant === 'offset-binary' ? 'zero stands at the middle of the range (offset binary)' : 'negative readings are printed above 32767'}.`,
    causes:
      meant === 'offset-binary'
        ? [
            'The sensor gives offset binary and the driver takes it for two’s complement, or the other way round.',
            'The top bit is inverted in the driver.',
          ]
        : [
            'The word is kept in an unsigned type: uint16_t where int16_t is meant.',
            'Two bytes are put together in a 32-bit int, so that the sign bit stays bit 15.',
          ],
    next: [
      'Cast the 16 bits to int16_t before anything else is done with them.',
      'Turn one axis down and look whether its reading is negative.',
    ],
  }),
}
