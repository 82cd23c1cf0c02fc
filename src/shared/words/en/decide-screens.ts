import { percent, percentRange } from './numbers'

/** On the screens of decisions: which gestures, how much data, which sensor is enough. */
export const DECIDE_SCREENS = {
  title: 'Decide',
  about: 'Before a part is bought or a tester invited: what the takes at hand say.',
  noTakesYet: 'There are no takes at hand yet.',
  recordOnMoves: 'Record takes on Moves',
  gestures: 'Which gestures',
  running: (what: string) => `${what} …`,
  notMeasured: 'Not measured yet.',
  noTakes: 'There are no takes to decide from.',
  again: 'Measure again',
  data: {
    title: 'How much data',
    action: 'Draw the learning curves',
    record: 'Record on Moves',
    moreTakes: 'More takes',
    moreTesters: 'More testers',
    plots: {
      take: 'Held-out takes right against takes',
      tester: 'Held-out takes right against testers',
    },
    axes: {
      take: 'takes a gesture of each tester',
      tester: 'testers in training',
    },
    right: 'right',
    point: (count: number, rate: { value: number; low: number; high: number }) =>
      `${count}: ${percent(rate.value)} (${percentRange(rate.low, rate.high)})`,
    errors: 'What goes wrong with everything recorded',
  },
  sensor: {
    title: 'Which sensor is enough',
    action: 'Try other sensors',
    tolerance: 'Loss that is accepted, points',
    limits: 'What cannot be said',
    own: 'As the target is',
    together: 'Several things cheaper at once',
    loss: (loss: string) => `loss ${loss}`,
    gains: 'gains 5',
    loses: 'loses 15 points',
  },
}
