/** Tunes and vibrations to choose from, and answers that belong to no gesture. */
export const LIGHT_PRESETS = {
  own: { idle: 'At rest', reject: 'Rejected movement', low: 'Low cells' },
  risingPair: 'Rising pair',
  fallingPair: 'Falling pair',
  bell: 'Bell',
  threeUp: 'Three up',
  short: 'Short',
  double: 'Double',
  swell: 'Swell',
}
