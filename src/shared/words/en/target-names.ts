/** Names of targets, sensor families and mountings to choose from. */
export const TARGET_NAMES = {
  handProp: 'Hand prop',
  decimal: 'Decimal sensitivities (0.061 mg, 8.75 mdeg/s a count)',
  powerOfTwo: 'Power-of-two sensitivities (16384 counts/g, 131 counts/(deg/s))',
  /** @param sign '' or '−' */
  axisLies: (board: string, sign: string, prop: string) => `board ${board} = ${sign}prop ${prop}`,
}
