/** How a figure is known: exact on this phone, measured on an emulated core, or computed from such. */
export const KNOWN_WORDS = {
  counted: 'counted',
  measured: 'measured',
  estimated: 'estimated',
}
