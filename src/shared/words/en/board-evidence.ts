/** Labels of the bars and traces that a finding on the board rests on. */
export const BOARD_EVIDENCE = {
  rate: 'rate',
  step: 'step',
  gravity: 'gravity',
  oneTurn: 'one turn',
  axisWithAxisUp: (axis: string, up: string) => `${axis} with ${up} up`,
}
