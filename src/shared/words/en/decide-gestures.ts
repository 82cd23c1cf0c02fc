import { percent, plural, shortNumber } from './numbers'

/** Which gestures to keep: pairs told apart, sets, and one pair in detail. */
export const DECIDE_GESTURES = {
  pair: {
    title: 'Pair',
    noPair: 'This pair is not in the comparison at hand.',
    compareAll: 'Compare all gestures',
    where: 'Where they differ',
    courseOf: (axis: string) => `Course of ${axis}`,
    hint: (takesA: number, takesB: number, points: number) =>
      `Segments as the recogniser compares them, ${takesA} and ${takesB} takes: each stretched to ${points} points. The strip counts the difference of the means in standard deviations within a gesture; bands are one standard deviation.`,
    byWhat: 'By what they are told apart',
    asCompared: 'as compared',
    rotationAlone: 'rotation alone',
    durationAlone: 'duration alone',
    sizeAlone: 'size alone',
    noGyroscope: 'no gyroscope',
    notAligned: 'not aligned',
    margin: (times: { value: number; low: number; high: number; n: number }) =>
      `Half would be told apart by chance. The other gesture is ${shortNumber(times.value)} times as far as the own one (${shortNumber(times.low)} to ${shortNumber(times.high)}, 95 % over takes; median of ${times.n} held-out takes).`,
    stripLabel: 'Difference by axis and time, told in the sentence above',
    start: 'start',
    full: (deviations: number) => `full: ${deviations} sd or more`,
    end: 'end',
  },
  title: 'Which gestures',
  about:
    'For each pair of gestures: how often held-out takes are told apart, where and on which axes they differ, and what to do about pairs that do not. Then the best set of each size.',
  pairs: 'Pairs, nearest first',
  showMore: (pairs: number) => `Show ${plural('more pair', pairs)}`,
  pairOf: (a: string, b: string) => `${a} and ${b}`,
  advice: (title: string) => ` – ${title}`,
  toldApart: 'told apart',
  sets: {
    title: 'How many to keep',
    plot: 'Takes right against gestures kept',
    axis: 'gestures kept',
    right: 'right',
    worstPair: 'worst pair',
    slider: 'Gestures to keep',
    size: (gestures: number) => plural('gesture', gestures),
    withAll: (accuracy: number) =>
      `Trained with all gestures, ${percent(accuracy)} of held-out takes are answered rightly.`,
  },
}
