import { durationText, plural, shortNumber } from './numbers'

/** Read on the screen of one gesture and in its takes. */
export const GESTURE = {
  renameGesture: (gesture: string) => `Rename ${gesture}`,
  deleteGesture: (gesture: string) => `Delete ${gesture}`,
  recordTakes: 'Record takes',
  takes: 'Takes',
  medianLength: 'Median length',
  toLight: 'Light, sound, vibration',
  testerCount: (testers: number) => plural('tester', testers),
  takeCount: (takes: number) => plural('take', takes),
  noTakesYet: 'None yet. Five are enough to begin; mix speeds and sizes.',
  newName: 'New name',
  rename: 'Rename',
  gestureLabel: 'Gesture',
  toReplay: 'Replay through the recogniser',
  delete: 'Delete',
  /** @param rateHz 0 where the device told none */
  takeFacts: (time: string, samples: number, rateHz: number, hasGyro: boolean, device: string) =>
    `${time}: ${samples} samples${rateHz > 0 ? ` at ${shortNumber(rateHz)} Hz` : ''}${hasGyro ? '' : ', without gyroscope'}; ${device}`,
  left: 'left',
  right: 'right',
  notNoted: 'not noted',
  testerCode: "Tester's code",
  hand: 'Hand',
  changeTester: 'Change tester',
  trimmed: 'trimmed',
  gapCount: (gaps: number) => plural('gap', gaps),
  start: 'Start',
  end: 'End',
  wholeCounts: (durationMs: number) => `The whole take counts: ${durationText(durationMs)}.`,
  partCounts: (partMs: number, durationMs: number) =>
    `${durationText(partMs)} of ${durationText(durationMs)} count; the rest stays stored.`,
  useWhole: 'Use the whole take',
}
