/** Cells and ways to feed a light, and where their figures are from. */
export const POWER_PRESETS = {
  aaAlkaline: 'AA alkaline',
  aaaAlkaline: 'AAA alkaline',
  cr2032: 'CR2032 coin cell',
  lr44: 'LR44 button cell',
  liPo: 'Small lithium polymer cell',
  aaNimh: 'AA nickel-metal hydride',
  aaCurves: 'means of two makers’ curves to 0.8 V at 21 °C (kurokatta.org, 2019)',
  cr2032Capacity: '225 mAh, 3.0 V, empty at 2.0 V (Wikipedia); 235 to 240 mAh, 3 mA (makers)',
  cr2032Others: '10 to 40 ohm, standard drain 0.2 mA (makers’ sheets, at second hand)',
  cellsInSeries: (cells: number) => `${cells} cells in series`,
  boostTo5V: 'a boost converter to 5 V',
}
