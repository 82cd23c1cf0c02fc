import { durationText, plural } from './numbers'

/** What the report says of gestures, testers and how the model is trained. */
export const REPORT_LIBRARY = {
  title: 'Library',
  gesturesCaption:
    'Gestures. Ribbon: the path of the prop’s tip, wide where it is fast. Threshold: a movement farther than this from a gesture is rejected; of the model of all takes.',
  testersCaption: 'Testers, by code. Understood: of their takes while they were held out.',
  background: 'Background',
  comparedBy: 'Compared by',
  templates: 'Templates a gesture, at most',
  points: 'Points of a segment',
  band: 'Warping band',
  rollAligned: 'Roll aligned by gravity',
  cutBy: 'Cut by',
  thresholdFactor: 'Threshold factor',
  heldStill: 'held still',
  noModel: 'no model',
  notMeasured: 'not measured',
  none: 'none',
  bandShare: (share: number) => `± ${Math.round(share * 100)} % of the segment`,
  extent: ({ extentCm, extentDeg }: { extentCm: number; extentDeg: number }) =>
    `${Math.round(extentCm)} cm, ${Math.round(extentDeg)}°`,
  ofGestures: (performed: number, gestures: number) => `${performed} of ${gestures}`,
  backgroundIn: (ms: number, recordings: number) =>
    `${durationText(ms)} in ${plural('recording', recordings)}`,
  gestureHeads: [
    'Gesture',
    'ribbon',
    'takes',
    'testers',
    'extent',
    'length',
    'threshold',
    'templates',
  ],
  testerHeads: ['Tester', 'takes', 'gestures', 'hand', 'source', 'understood', '95 % interval'],
  yes: 'yes',
  no: 'no',
  segmentation: { motion: 'motion', button: 'a button' },
}
