import { groupDigits, plural } from './numbers'

/** Getting the logs of a board: cable, file, text or simulation, step by step. */
export const BOARD_LOGS = {
  check: {
    title: 'Board check',
    noLibrary: 'A board is compared with the target of a library, and none is open.',
    toMoves: 'Go to Moves',
    routine:
      'Rest, six faces, three turns and a shake, about two minutes. What is missing is not asked: one log is enough for a first look.',
    wayLegend: "The board's readings come",
    overCable: 'over a cable',
    asFile: 'as a file or text',
    simulated: 'simulated',
    nextTitle: 'What the logs are good for next',
    calibration: 'Calibration from six faces',
    mounting: 'Mounting, from a phone on the same prop',
    decision: 'Does the board decide as the phone did?',
    steps: 'Steps',
  },
  add: {
    logOf: 'This log is of',
    movedFreely: 'something else, moved freely',
    chooseFile: 'Choose a file',
    pasteLines: 'or paste lines',
    pastedText: 'The pasted text',
    reading: 'Reading the log',
    readLog: 'Read the log',
    samplesRead: (count: number) => `${groupDigits(count)} samples read.`,
    checkedFirst: (most: number) => `The check looks at the first ${groupDigits(most)}.`,
    leftOut: (count: number, line: number, what: string) =>
      count === 1
        ? `1 line was left out: line ${line}, ${what}.`
        : `${groupDigits(count)} lines were left out; the first is line ${line}: ${what}.`,
    cut: {
      stopped: () => 'The rest was not read, as you stopped it.',
      'too-long': (most: number) =>
        `The rest was left: a log has at most ${groupDigits(most)} samples here.`,
      broken: () => 'Then the file could not be read further; what was read is kept.',
    },
  },
  beside: {
    background: 'background',
    take: 'take',
    noRecording: 'There is no recording of the phone in this library.',
    recordingLabel: 'Recording of the phone',
    chooseOne: 'choose one',
    logSamples: (count: number) => `Log of the board: ${groupDigits(count)} samples.`,
    recording: (name: string, when: string, tester: string, duration: string) =>
      `${name}, ${when}, ${tester}, ${duration}`,
  },
  columns: {
    timeIn: (unit: string) => `time in ${unit}`,
    noTime: 'no time',
    gyroscopeIn: (unit: string) => `gyroscope in ${unit}`,
    noGyroscope: 'no gyroscope',
    summary: (time: string, accelUnit: string, gyroscope: string) =>
      `Columns: ${time}, accelerometer in ${accelUnit}, ${gyroscope}`,
  },
  keep: {
    title: 'Keep the log moved freely',
    kept: 'It is in the library, marked as from a board.',
    keep: 'Keep in the library',
  },
  link: {
    noSerial:
      'This browser cannot read a serial port. On a desk, browsers built on Chromium can; or log with a terminal program and bring the file.',
    baudRate: 'Baud rate, as in the firmware',
    disconnect: 'Disconnect',
    connect: 'Connect the board',
    noLine:
      'Connected; no line has come yet. A board that prints only after a reset wants one now.',
    lines: (count: number) => `${groupDigits(count)} lines`,
    otherBaudRate: (trouble: string) =>
      `${trouble} If the lines above look like noise, the baud rate is another.`,
  },
  step: {
    samples: (step: string, rows: number) => `${step}: ${plural('sample', rows)}`,
    logFor: (seconds: number) => `Log ${seconds} s`,
    sampleCount: (rows: number) => plural('sample', rows),
    remove: (step: string) => `Remove the log of ${step}`,
    removeAll: 'Remove all logs of this visit',
  },
  simulated: {
    hint: 'Nothing here was measured: rest, faces, turns and shake are computed, with the noise and the offsets that data sheets allow.',
    fault: 'Fault',
    sound: 'none: a sound board',
    log: 'Log the simulated board',
  },
}
