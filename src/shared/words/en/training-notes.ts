import { groupDigits, plural, shortNumber, UNIT_SPACE } from './numbers'

/** What training noticed, and what it chose. */
export const TRAINING_NOTES = {
  fewTakes: ({ gesture, count, least }: { gesture: string; count: number; least: number }) =>
    `${gesture} has ${count} usable ${count === 1 ? 'take' : 'takes'}: record at least ${least}.`,
  notCut: ({
    lost,
    all,
    missed,
    short,
    long,
  }: {
    lost: number
    all: number
    missed: number
    short: number
    long: number
  }) =>
    `In ${lost} of ${all} takes no single movement was cut: ${missed} without any, ${short} too short, ${long} too long.`,
  split: (split: number, all: number) =>
    `${split} of ${all} takes were cut into several movements; the longest was used.`,
  oneTester: 'All takes are by one tester: how it does for others is not known.',
  noBackground: 'There is no background recording: thresholds have not seen what is not a gesture.',
  pressed: ({ unknown, takes, marginMs }: { unknown: number; takes: number; marginMs: number }) =>
    unknown === 0
      ? 'Figures hold for hands that press the button as they did when the takes were recorded, or as the takes are trimmed.'
      : `When the button was down is not known of ${unknown} of ${takes} takes: it is taken to be held from ${marginMs}${UNIT_SPACE}ms before the hand moves until ${marginMs}${UNIT_SPACE}ms after. Trim them, or record them by the button to hold.`,
  noTakes: (gesture: string) => `${gesture} has no takes and is not in the model.`,
  noMovement: (gesture: string, takes: number) =>
    `No movement was found in the ${takes === 1 ? 'take' : `${takes} takes`} of ${gesture}, so it is not in the model: hold a pose with a button (Prop, Training), or perform it with more motion.`,
  alone: (gesture: string) =>
    `${gesture} is the only gesture with takes: with nothing to confuse it with, only its rejects can be counted. Record a second gesture.`,
  sameSamples: (gestures: readonly string[]) =>
    `${gestures.join(' and ')} share takes with the very same samples, so nothing can tell them apart: delete them where they are wrong.`,
  copies: (copies: number, takes: number) =>
    `${plural('take', copies)} of ${takes} ${copies === 1 ? 'is a copy' : 'are copies'} of another take: held out, they are known already, and every figure looks better than it is. Delete the copies.`,
  noGyro:
    'No take has gyroscope readings: rotation counts as nought, and movements that differ in turning alone look the same. A model for a board with a gyroscope needs takes with one.',
  someWithoutGyro: (without: number, takes: number) =>
    `${without} of ${takes} takes have no gyroscope readings: their rotation counts as nought, which looks like another movement. Leave them out, or record them again with a sensor that has one.`,
  mixedRates: ({
    lowHz,
    highHz,
    fast,
    takes,
  }: {
    lowHz: number
    highHz: number
    fast: number
    takes: number
  }) =>
    `Takes come at ${shortNumber(lowHz)} to ${shortNumber(highHz)}${UNIT_SPACE}Hz: what is faster than ${shortNumber(lowHz / 2)}${UNIT_SPACE}Hz is in ${fast} of ${takes} takes only, and may tell devices apart instead of gestures.`,
  shortBackground: ({ ms, mostPerHour }: { ms: number; mostPerHour: number }) =>
    `The background lasts ${shortNumber(ms / 1000)}${UNIT_SPACE}s: even without an activation there may be up to ${groupDigits(mostPerHour)} an hour (95${UNIT_SPACE}%, exact Poisson). Record at least 2${UNIT_SPACE}minutes of walking and talking.`,
  upToTemplates: (count: number) => `up to ${count} templates`,
  kernelFeatures: ({
    count,
    pools,
    templates,
    logWeight,
    ridge,
    changed,
  }: {
    count: number
    pools: number
    templates: number
    logWeight: number
    ridge: number
    changed: number
  }) =>
    `${count} kernel features of ${pools} pools, ${templates} templates, log weight ${logWeight}, ridge ${ridge}, int8 changes ${(100 * changed).toFixed(1)} % of training answers`,
}
