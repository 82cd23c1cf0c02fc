/** Read around the report, not in it. */
export const REPORT_SCREEN = {
  title: 'Report',
  noTakes: 'There are no takes to report on.',
  recordTakes: 'Record takes on Moves',
  preparing: 'Putting the figures together …',
  notMeasured: 'Recognition was not measured yet: the report says so and has no figures of it.',
  toProof: 'Measure on Proof',
  print: 'Print',
  html: 'HTML',
  htmlFile: 'HTML file',
  plots: 'Plots',
}
