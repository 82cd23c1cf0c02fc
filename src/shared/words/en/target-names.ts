/** Names of targets, sensor families, mountings and parts to choose from. */
export const TARGET_NAMES = {
  handProp: 'Hand prop',
  decimal: 'Decimal sensitivities (0.061 mg, 8.75 mdeg/s a count)',
  powerOfTwo: 'Power-of-two sensitivities (16384 counts/g, 131 counts/(deg/s))',
  /** @param sign '' or '−' */
  axisLies: (board: string, sign: string, prop: string) => `board ${board} = ${sign}prop ${prop}`,
  avr32: '8-bit, 32 KB / 2 KB, 16 MHz',
  avr128: '8-bit, 128 KB / 16 KB, 16 MHz',
  m032: 'Cortex-M0+, 32 KB / 4 KB, 32 MHz',
  m064: 'Cortex-M0+, 64 KB / 8 KB, 48 MHz',
  m0256: 'Cortex-M0+, 256 KB / 32 KB, 48 MHz',
  m4f256: 'Cortex-M4F, 256 KB / 64 KB, 64 MHz',
  m33512: 'Cortex-M33, 512 KB / 128 KB, 100 MHz',
  asTheTarget: 'as the target says',
}
