const SENSORS = { accelerometer: 'accelerometer', gyroscope: 'gyroscope' }
type Sensor = keyof typeof SENSORS

const FIGURES = {
  clock: 'clock',
  flash: 'flash',
  ram: 'RAM',
  modelFlash: 'flash for the model',
}

/** What is wrong with a target, and what to do. */
export const TARGET_TROUBLE = {
  mountingEmpty: 'The mounting needs nine numbers: fill in the empty ones.',
  noRotation: (error: number) =>
    `The mounting is not a rotation (its rows are off by ${error.toFixed(3)}): rows must have length 1 and stand at right angles.`,
  mirrored:
    'The mounting mirrors the prop, so an axis sign is flipped: change the sign of one row.',
  fullScale: (sensor: Sensor, unit: string) =>
    `The ${SENSORS[sensor]}'s full scale must be above 0 ${unit}: take it from the data sheet.`,
  sensitivity: (sensor: Sensor, unit: string) =>
    `The ${SENSORS[sensor]}'s sensitivity must be a whole number of 1e-9 ${unit} a count, from 1 to 4294967295: take it from the data sheet.`,
  fullScaleCount: ({
    sensor,
    fullScale,
    unit,
    counts,
  }: {
    sensor: Sensor
    fullScale: number
    unit: string
    counts: number
  }) =>
    `The ${SENSORS[sensor]}'s sensitivity puts full scale (${fullScale} ${unit}) at count ${Math.round(counts)}, which 16 bits cannot be: check the unit of the sensitivity and that it is the one of this range.`,
  figure: (what: keyof typeof FIGURES) => `The board's ${FIGURES[what]} must be a number above 0.`,
  modelOverFlash: (modelBytes: number, flashBytes: number) =>
    `The model may take ${modelBytes} bytes but the board has ${flashBytes} bytes of flash: lower the model's share.`,
  noName: 'The target has no name: give it one.',
  rate: ({ rateHz, least, most }: { rateHz: number; least: number; most: number }) =>
    `The output data rate is ${rateHz} Hz: choose one from ${least} to ${most} Hz.`,
  longAxis: 'The axis along the prop must be x, y or z of the board.',
}
