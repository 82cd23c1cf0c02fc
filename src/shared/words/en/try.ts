/** Read on Try. */
export const TRY = {
  lastMovements: 'Last movements',
  newestFirst: 'newest first',
  try: 'Try',
  noTakesYet: 'The recogniser learns from takes, and there are none yet.',
  recordTakes: 'Record takes on Moves',
  stop: 'Stop',
  whatRuns: (stale: boolean) =>
    `The phone runs the recogniser that is exported for the board, on what the board’s sensor would read.${stale ? ' It is trained on the takes first.' : ''}`,
  toTeach: 'Teach: three movements become a gesture, as on the prop',
  toStage: 'Stage: the whole screen as the light, for a dark hall',
  startSimulated: 'Start with the simulated phone',
  start: 'Start',
  starting: 'Starting …',
  useSensors: 'Use this phone’s sensors',
  useSimulated: 'Use the simulated phone',
  gestures: 'Gestures of this library',
  holdWhileYouMove: 'Hold while you move',
  letGo: 'Let go when the movement is over',
  cutByButton: 'Movements are cut by the button: what moves without it is passed over.',
  makeOne: 'Rest a moment, then make one of these.',
  none: 'none',
  energyDescribed: (shownS: number, sentence: string) =>
    `Motion energy of the last ${shownS} s. ${sentence}`,
  energy: (shownS: number) => `motion energy, last ${shownS} s`,
  distances: 'Distance to each gesture',
  notCompared: 'This movement was not compared with any gesture.',
}
