/** Kinds of microcontrollers to choose from. */
export const PART_NAMES = {
  avr32: '8-bit, 32 KB / 2 KB, 16 MHz',
  avr128: '8-bit, 128 KB / 16 KB, 16 MHz',
  m032: 'Cortex-M0+, 32 KB / 4 KB, 32 MHz',
  m064: 'Cortex-M0+, 64 KB / 8 KB, 48 MHz',
  m0256: 'Cortex-M0+, 256 KB / 32 KB, 48 MHz',
  m4f256: 'Cortex-M4F, 256 KB / 64 KB, 64 MHz',
  m33512: 'Cortex-M33, 512 KB / 128 KB, 100 MHz',
  asTheTarget: 'as the target says',
}
