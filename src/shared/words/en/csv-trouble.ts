/** Where a field stands: the file, its row, and the name of its column. */
interface Field {
  file: string
  row: number
  column: string
}

/** A row and how many fields it has of those that are expected. */
interface Row {
  file: string
  row: number
  found: number
  columns: number
}

/** A row whose time lies before that of the row above. */
interface Times {
  file: string
  row: number
  beforeMs: number
  nowMs: number
}

const place = ({ file, row, column }: Field) => `${file}, row ${row}, column ${column}`

/** What is wrong with a CSV file, where, and what to do. */
export const CSV_TROUBLE = {
  theFile: 'The file',
  timeTwice: (file: string, row: number, ms: number) =>
    `${file}, row ${row} has the same time as the row before (${ms} ms after the first). Give a rate instead of the time column, or delete the row.`,
  timeBack: ({ file, row, beforeMs, nowMs }: Times) =>
    `${file}, row ${row}: time goes back from ${beforeMs} ms to ${nowMs} ms after the first row. Put the rows in order of time, or give a rate instead.`,
  noSuchColumn: (file: string, columns: number) =>
    `${file}: the mapping names a column beyond the ${columns} there are. Choose the columns again.`,
  columnTwice: (file: string) =>
    `${file}: the mapping uses one column twice. Choose another column for one of them.`,
  rate: (file: string) =>
    `${file}: the rate must be above 0 and at most 10000 Hz. Type the rate of the log.`,
  sensitivity: (file: string) =>
    `${file}: the sensitivity must be above 0. Take it from the data sheet, for the range in use.`,
  noNumbers: (file: string) =>
    `${file} has no row with three numbers. Choose a log of sensor readings.`,
  noAccelerometer: (file: string, columns: number) =>
    `${file} has ${columns} columns, and no three of them look like an accelerometer's x, y and z.`,
  noHeader: 'There is no header: the order accelerometer, gyroscope was assumed.',
  noTime: 'No column looks like time: say how many rows a second there are.',
  noGyro: 'No gyroscope was found; its values will be 0.',
  inCounts: 'The accelerometer seems to be in counts: check the sensitivity.',
  quoteOpen: (file: string, row: number) =>
    `${file}, row ${row}: a quotation mark is opened and never closed. Close it, or double it inside a quoted field.`,
  noRows: (file: string) => `${file} has no rows. Choose a CSV with samples.`,
  header: (file: string, expected: string) =>
    `${file}, row 1: expected the header ${expected}. Import other logs with the column mapping.`,
  shortRow: ({ file, row, found, columns }: Row) =>
    `${file}, row ${row} has ${found} of ${columns} fields. The file may have been cut off; complete or delete the row.`,
  longRow: ({ file, row, found, columns }: Row) =>
    `${file}, row ${row} has ${found} fields where ${columns} are expected. If numbers have a decimal comma, write a decimal point.`,
  decimalComma: (at: Field, text: string) =>
    `${place(at)}: "${text}" has a decimal comma. Write numbers with a decimal point.`,
  empty: (at: Field) => `${place(at)} is empty. Write a number or delete the row.`,
  notFinite: (at: Field, text: string) => `${place(at)}: "${text}" is not a finite number.`,
  tooLarge: (at: Field) =>
    `${place(at)}: the number is larger than any reading. Correct or delete the row.`,
  timeOrder: ({ file, row, beforeMs, nowMs }: Times) =>
    `${file}, row ${row}: time goes back from ${beforeMs} ms to ${nowMs} ms. Put the rows in order of time.`,
}
