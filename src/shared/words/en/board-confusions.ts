/** What makes a sensor's readings too large or too small by a known factor. */
export const BOARD_CONFUSIONS = {
  /** @param power of two that the readings are too large by */
  otherRange: (power: number) =>
    `The sensor is set to a range with ${power > 0 ? `${2 ** power} times finer` : `${2 ** -power} times coarser`} counts than the target says.`,
  otherUnit: (is: string, takenFor: string) => `The log is in ${is} and is taken for ${takenFor}.`,
  partIsPowerOfTwo:
    'The target takes decimal sensitivities (8.75 mdeg/s a count at ±250) and the part has full scale at 32768 (7.63).',
  partIsDecimal:
    'The target takes full scale at 32768 (7.63 mdeg/s a count at ±250) and the part has decimal sensitivities (8.75).',
  otherRangeAndFamily:
    'Another range is set, and the part is of the other family of sensitivities.',
}
