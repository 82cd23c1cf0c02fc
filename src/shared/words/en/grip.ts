/** Read on Grip. */
export const GRIP = {
  title: 'Grip',
  noTakes: 'There are no takes to turn.',
  recordTakes: 'Record takes on Moves',
  measureAgain: 'Measure again',
  measure: 'Measure grip tolerance',
  lead: 'The same movement looks different in every grip. Here held-out takes are turned about the long axis, and the mounting is tilted, before anything else is done with them.',
  recallWanted: 'Recall wanted',
  rollTitle: 'Turned about the long axis',
  rollPlot: 'Recall against roll of the grip',
  bestForCost: '– carries furthest for its cost',
  tiltTitle: 'Mounting tilted',
  tiltPlot: 'Recall against tilt of the mounting',
}
