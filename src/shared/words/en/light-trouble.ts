/** What is wrong with an effect, or with steps of a tune as they were typed. */
export const LIGHT_TROUBLE = {
  noKeysAllowed: (kind: string) =>
    `An effect of kind "${kind}" has no keyframes; this one has some.`,
  keyCount: (count: number, most: number) =>
    `An effect holds 2 to ${most} keyframes, this one has ${count}: ${count < 2 ? 'add some' : 'remove some, or loop a shorter piece'}.`,
  keyTime: (keyframe: number, mostMs: number) =>
    `Keyframe ${keyframe} needs a time from 0 to ${mostMs} ms, in whole ms.`,
  firstKey: (keyframe: number, atMs: number) =>
    `Keyframe ${keyframe} is at ${atMs} ms: the first must be at 0 ms.`,
  keyOrder: (keyframe: number, atMs: number, beforeMs: number) =>
    `Keyframe ${keyframe} is at ${atMs} ms, before keyframe ${keyframe - 1} at ${beforeMs} ms: put them in order of time.`,
  keyGap: (keyframe: number, gapMs: number, leastMs: number) =>
    `Keyframe ${keyframe} comes ${gapMs} ms after the one before: leave at least ${leastMs} ms.`,
  keyRange: (keyframe: number) =>
    `Keyframe ${keyframe} has a brightness or colour outside of 0 to 255.`,
  period: ({ periodMs, leastMs, mostMs }: { periodMs: number; leastMs: number; mostMs: number }) =>
    `A round takes ${leastMs} to ${mostMs} ms, this one ${periodMs} ms: make it longer or shorter.`,
  roundEnd: (periodMs: number, lastMs: number) =>
    `The round ends at ${periodMs} ms but the last keyframe at ${lastMs} ms.`,
  byteRange: 'Brightness, colour and hue are whole numbers from 0 to 255.',
  levelsSwapped: (low: number, high: number) =>
    `The dimmest is brighter than the brightest (${low} and ${high}): swap them.`,
  wholeMs: (mostMs: number) => `Rounds and fade are whole numbers from 0 to ${mostMs}.`,
  tooManySteps: (count: number, most: number) => `There are ${count} steps, ${most} are the most.`,
  step: (step: number, typed: string, most: number) =>
    `Step ${step} ("${typed}") must be two whole numbers, 0 to ${most} and 1 to 10000 ms.`,
}
