/** On the screen of teaching: what to teach, the session, and what it costs the others. */
export const TEACH_SCREENS = {
  title: 'Teach',
  newGesture: 'The new gesture',
  noTakes: 'A prop is taught beside gestures that it knows, and there are no takes yet.',
  record: 'Record takes on Moves',
  wish: {
    oneMore: 'One gesture more',
    inPlaceOf: (gesture: string) => `In place of ${gesture}`,
    about:
      'The exported core can learn on the prop: three movements, no phone, no training. Here the same code learns on this phone, so that you see beforehand whether it works and what it costs the other gestures. Nothing is stored.',
    think: 'Think of a movement that none of the gestures resembles.',
    putAside: (gesture: string) =>
      `The templates of ${gesture} are put aside: afterwards only your way of making it counts.`,
    starting: 'Starting …',
    startSimulated: 'Start with the simulated phone',
    start: 'Start',
    usePhone: 'Use this phone’s sensors',
    useSimulated: 'Use the simulated phone',
  },
  session: {
    first: (times: number) => `Rest a moment, then make the movement ${times} times.`,
    restBetween: 'Rest between two of them.',
    nearest: 'Nearest other gestures',
    taken: (made: number, of: number) => `${made} of ${of} movements taken`,
    since: 'Recognised since',
    newestFirst: 'newest first',
    seeCost: 'See what it costs the others',
    again: 'Begin again',
    another: 'Teach another',
    stop: 'Stop',
  },
  cost: {
    title: 'What it costs the others',
    without: 'without',
    with: 'with',
    lost: 'Lost takes',
    nowTaught: (gesture: string) => `${gesture}, now the taught gesture`,
    nowElse: (gesture: string) => `${gesture}, now something else`,
  },
}
