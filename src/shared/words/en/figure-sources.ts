/** Where figures of LEDs and cells are from, when no data sheet was read. */
export const FIGURE_SOURCES = {
  ledPages: 'typical forward voltages at 20 mA as collected on LED reference pages',
  fromMemory: 'from memory; take the maker’s data sheet instead',
}
