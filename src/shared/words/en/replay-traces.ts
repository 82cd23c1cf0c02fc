import { groupDigits } from './numbers'

/** Beside the traces of a replay: motion energy, distances as they grow, the segment against its template. */
export const REPLAY_TRACES = {
  whole: 'Show the whole recording',
  beside: 'Beside it, dashed',
  besideHint: 'Laid where this movement begins, on the same scales.',
  lanes: 'Light, motion energy against its thresholds and the six traces of the recording',
  kernelAlone:
    'Compared by kernel features alone, which weigh the segment as a whole: no distance grows.',
  distance: 'Distance as the segment unrolls',
  sumOfCosts:
    'Sum of costs along the best path to each gesture’s nearest template; its end is the distance that was decided on.',
  sumWithKernel:
    'Sum of costs along the best path to each gesture’s nearest template: the templates’ part; kernel features weigh the whole segment and decide with it.',
  against: 'Against the template',
  nearestOf: 'Nearest template of',
  noTemplate: (gesture: string) => `${gesture}, no template`,
  distanceOf: (gesture: string, distance: number) =>
    `${gesture}, distance ${groupDigits(distance)}`,
  none: 'none',
  growth: {
    threshold: (threshold: number) => `threshold ${groupDigits(threshold)}`,
    atEnd: (gesture: string, distance: number) => `${gesture} ${groupDigits(distance)}`,
    spoken: (nearestFirst: readonly string[]) =>
      `Distances at the end of the segment, nearest first: ${nearestFirst.join(', ')}`,
  },
  energy: {
    name: 'motion energy',
    starts: (threshold: number) => `starts ${groupDigits(threshold)}`,
    ends: (threshold: number) => `ends ${groupDigits(threshold)}`,
    peak: (energy: number) => `peak ${groupDigits(energy)}`,
    armed: 'armed',
    decided: 'decided',
  },
  pairing: {
    channel: 'Channel',
    links: 'Segment against template',
    path: 'Warping path within its band',
    hint: 'Above the segment as it was compared, below the template; each line joins two points that were laid on each other. In the square the segment runs to the right and the template up: on the diagonal both went at one speed, and the band leaves the path no more room than it shows.',
  },
  choices: {
    nothing: 'nothing',
    nearest: (gesture: string, tester: string) => `nearest template: ${gesture} by ${tester}`,
    take: (number: number, tester: string) => `take ${number} by ${tester}`,
  },
}
