/** Why a board’s decisions cannot be compared with those of the phone. */
export const BOARD_DECISION = {
  noGyro: 'The log has no gyroscope, and the recogniser needs one.',
  rateOff: (foundHz: number, wantedHz: number) =>
    `The log has ${foundHz.toFixed(1)} samples a second and the target ${wantedHz}: the recogniser refuses more than 5 % off. See the board check.`,
  noWord: (row: number, printed: number) =>
    `Row ${row} holds ${printed}, which 16 bits cannot be: see the board check.`,
  modelRefused: (reason: string) => `The recogniser refuses the model: ${reason}. Train it again.`,
  cutByButton:
    'This library’s movements are cut by a button, and a log of samples does not say when it was down: compare the self-test’s log instead (INTEGRATION.md).',
  eventCutOff: ({ line, words, of }: { line: number; words: number; of: number }) =>
    `Line ${line} of the event log has ${words} words where ${of} stand: it was cut off. Copy the log again.`,
  noEvents: 'There is no event line in this text: paste what the device printed.',
}
