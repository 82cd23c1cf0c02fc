/** What is wrong with a log of a board, or with one of its lines. */
export const BOARD_LOG = {
  tooFewSamples: 'The log has fewer than two samples.',
  timeBackwards: (row: number) =>
    `Time goes backwards at row ${row}: see the board check, or choose "no column" for time.`,
  theLog: 'The log',
  /** @param first line that could not be read, and what is wrong with it; null when there is no line */
  noRows: (name: string, first: { line: number; what: string } | null) =>
    `${name} has no line that could be read (${first === null ? 'it is empty' : `line ${first.line}: ${first.what}`}). Check the columns, and that the board was printing.`,
  timeAlone: 'its time lies far before those of the lines around it',
  tooLong: 'it is too long for a reading',
  tooFewFields: (found: number, needed: number) =>
    `it ends after ${found} of at least ${needed} fields`,
  notANumber: (column: number, shown: string) =>
    `column ${column} holds "${shown}" and not a number`,
}
