import { plural } from './numbers'

/** On the stage: before the show, its controls, a visitor's card, and what the evening brought. */
export const STAGE_SCREENS = {
  title: 'Stage',
  noTakes: 'The lantern answers movements that it knows, and there are no takes yet.',
  record: 'Record takes on Moves',
  notLoaded: 'The stage could not be loaded: the network is away. Reload when it is back.',
  setup: {
    notShown: 'Light that is over three flashes a second is not shown on the stage.',
    begin: 'Begin',
    about:
      'The phone is the lantern: its light fills the screen and answers each movement. The screen stays on, and a stray touch does not end it.',
    inLight: 'In the light',
    gestureName: 'Name of the gesture',
    nothing: 'Nothing',
    visitors: 'For visitors',
    anyMovement: 'Any movement',
    cards: 'Cards: try this one',
    beginSimulated: 'Begin with the simulated phone',
    usePhone: 'Use this phone’s sensors',
    useSimulated: 'Use the simulated phone',
    refused: ({ seen, todo }: { seen: string; todo: string }) => `${seen} ${todo}`,
  },
  show: {
    dark: 'The light stays dark: it is over three flashes a second. Mend it on Prop, Light.',
    answered: (movements: number) => `${plural('movement', movements)} answered`,
    name: 'Name',
    leave: 'Leave the stage: hold for 2 seconds, or press Escape',
    keepHolding: 'Keep holding',
    holdToLeave: 'Hold to leave',
  },
  tally: {
    title: 'This evening',
    nothing: 'Nothing counted yet. Movements that were answered are counted here.',
    reset: 'Set to nought',
    answered: (movements: number, sinceAt: string, turns: string) =>
      `${plural('movement', movements)} answered since ${sinceAt}${turns === '' ? '' : `; ${turns}`}. Only these counts are kept.`,
  },
  card: {
    askedFor: (gesture: string) => `${gesture} was asked for.`,
    ready: 'Ready',
    another: 'Another one',
    try: 'Try this movement',
    now: 'Now',
  },
}
