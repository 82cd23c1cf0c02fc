import type { PlanHand } from '../../collect/plan'
import { plural } from './numbers'

/** Planning what testers perform, and the code that carries a plan to their phones. */
export const COLLECT_PLANS = {
  overview: {
    title: 'Collect from testers',
    writePlan: 'Write a plan',
    about:
      "A plan says what each tester performs. It becomes a code: scanned with a phone's camera, it opens this app with the plan ready. What they record comes home as a file or by camera.",
    noGestures: 'A plan asks for takes of gestures, and there are none yet.',
    addGesture: 'Add a gesture on Moves',
    anotherPlan: 'Another plan',
    bringHome: 'Bring home',
    chooseFiles: 'Choose session files',
    bringHint:
      'Several at once, sessions or whole libraries. They can also be dropped or pasted here, or shared to this app. Nothing is stored before you agree.',
    byCamera: 'From another phone by camera',
    testers: 'Testers',
    noSession: 'No session was brought home yet.',
    sessions: (count: number) => `${plural('session', count)} brought home.`,
    compareTesters: 'Compare testers',
    planFacts: (minutes: string, progress: string) => `${minutes} a tester, estimated; ${progress}`,
  },
  plan: {
    title: 'Plan',
    remove: 'Delete this plan',
    showCode: 'Show the code',
    length: 'A session takes',
    estimated: 'estimated',
    takesEach: 'Takes a tester',
    gestures: 'Gestures',
    settings: 'How it runs',
    missing: 'Still missing',
    takesHere: 'Takes here, of those asked for',
    takesHereHint: 'Takes here, of those asked for.',
    tester: 'Tester',
  },
  gesture: {
    atLeastOne: 'A plan needs at least one gesture.',
    takes: (count: number) => (count === 0 ? 'not asked' : `${count} takes`),
    words: 'What the hand does',
    noDemonstration: 'No demonstration: testers read the words.',
    shown: (lengthS: number) => `Testers see one of your takes, ${lengthS.toFixed(1)}\u202fs.`,
    tooShort: 'That take is too short to show.',
    showTake: 'Show a take',
    change: 'Change',
    demonstration: 'Demonstration',
    chooseTake: 'Choose a take',
    none: 'None',
    take: (when: string, tester: string, lengthMs: number) =>
      `${when} by ${tester}, ${(lengthMs / 1000).toFixed(1)}\u202fs`,
  },
  settings: {
    hands: {
      own: "the tester's own",
      left: 'left',
      right: 'right',
      both: 'both, one after the other',
    } satisfies Record<PlanHand, string>,
    order: 'Order',
    shuffled: 'Shuffled',
    blocked: 'One gesture after the other',
    orderHint:
      'Shuffled takes are less alike, as at an event. One after the other is easier to follow.',
    grip: 'Grip',
    freeGrip: 'As they like',
    markedGrip: 'Screen towards them',
    hand: 'Hand',
    restAfter: 'A rest after',
    restEvery: (takes: number) => (takes === 0 ? 'no rests' : `${takes} takes`),
    restLength: 'Length of a rest',
    seconds: (ms: number) => `${ms / 1000}\u202fs`,
    background: 'Background at the end',
    backgroundLength: (ms: number) =>
      ms === 0 ? 'none' : ms < 60_000 ? `${ms / 1000}\u202fs` : `${ms / 60_000}\u202fmin`,
    sending: 'Sending to the shared folder',
    notOffered: 'Not offered',
    offered: 'Offered to testers',
    sendingHint: (address: string) =>
      `The link then holds the address ${address}; a tester taps to send, and nothing goes by itself.`,
  },
  code: {
    title: 'Join by code',
    opens: (gestures: readonly string[]) => `Code that opens the plan: ${gestures.join(', ')}`,
    legend: 'Codes',
    ofSeveral: (number: number, count: number) => `${number} of ${count}`,
    scan: (gestures: readonly string[], minutes: string) =>
      `Scan it with a phone's camera and open the link. ${gestures.join(', ')}: ${minutes}, estimated.`,
    copied: 'Copied.',
    notCopied: 'The browser did not allow copying: mark the link below and copy it.',
    copy: 'Copy the link',
    share: 'Share the link',
    link: 'The link',
    privacy:
      'The plan is in the part behind #, which browsers send to nobody: not even the host of this page sees it.',
  },
}
