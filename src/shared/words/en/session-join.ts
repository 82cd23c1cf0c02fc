import { plural } from './numbers'

/** What a tester reads before a session: the plan, consent, which hand, the phone on a table. */
export const SESSION_JOIN = {
  noLink: 'This link does not open',
  openLibrary: 'Open the library of this phone',
  nothingStored: 'Nothing was stored or changed on this phone.',
  takePart: 'Take part',
  performedPart: (tester: string, part: number) =>
    `${tester} performed part ${part} on this phone.`,
  standsAt: (tester: string, done: number, total: number) =>
    `The session of ${tester} stands at ${done} of ${total}.`,
  goOnAs: (tester: string) => `Go on as ${tester}`,
  goOn: 'Go on',
  beginAsOther: 'Begin as somebody else',
  asked: (movements: number, minutes: string, part: { number: number; of: number }) =>
    `You hold this phone as if it were the prop and move it: ${plural('movement', movements)}, ${minutes}${part.of > 1 ? `, part ${part.number} of ${part.of}` : ''}. You are told what to do, one movement at a time.`,
  movement: (gesture: string, takes: number) => `${gesture} × ${takes}`,
  consent: {
    title: 'Is this all right with you?',
    motionOnly: {
      strong: 'Motion only.',
      text: 'While you perform, this phone records how it moves and turns. No sound, no picture, no place, no name.',
    },
    whatFor: (plan: string) => ({
      strong: 'What for.',
      text: `A prop learns to tell these movements apart: ${plan}.`,
    }),
    yours: {
      strong: 'Yours.',
      text: 'It stays on this phone until you hand it over. You can stop at any moment, and have it deleted at any time by a code that you are given.',
    },
    refuse: 'No, thank you',
    agree: 'I agree',
  },
  hand: {
    title: 'Which hand will hold it?',
    left: 'Left hand',
    right: 'Right hand',
    keepToIt: 'Keep to it for the whole session, and hold firmly: the phone is the prop.',
  },
  flat: {
    title: 'Lay the phone on a table',
    noTable: 'There is no table here',
    screenUp: 'Screen up, and take your hand off for a second. It goes on by itself.',
  },
  demonstration: {
    label: (gesture: string) => `The prop moves as for ${gesture}`,
    show: 'Show the movement',
  },
}
