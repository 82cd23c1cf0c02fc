import { plural } from './numbers'

const MOST_NAMED = 3

/** @param testers codes */
const by = (testers: readonly string[]) =>
  testers.length > MOST_NAMED ? plural('tester', testers.length) : testers.join(', ')

/** Values that are kept as a word. */
const VALUES: Record<string, string> = {
  true: 'yes',
  false: 'no',
  motion: 'motion',
  button: 'button',
  template: 'template',
  kernel: 'kernel',
  auto: 'auto',
}

const said = (value: unknown) => VALUES[String(value)] ?? String(value)

const SETTINGS = {
  templatesPerGesture: 'templates a gesture',
  length: 'points',
  bandShare: 'band',
  rollAlign: 'roll aligned',
  segmentation: 'cut by',
  thresholdFactor: 'threshold factor',
  matcher: 'matcher',
  rateHz: 'rate, Hz',
  accelFullScale: 'accelerometer, g',
  gyroFullScale: 'gyroscope, °/s',
  backgrounds: 'background recordings',
}

/** Something that training reads and that has one value. */
export type ComparedSetting = keyof typeof SETTINGS

/** What of the library and its settings is different between two models, as clauses. */
export const MODEL_CHANGES = {
  otherCore: 'another version of the recogniser or of its training',
  more: (takes: number, testers: readonly string[]) =>
    `${plural('take', takes)} more by ${by(testers)}`,
  fewer: (takes: number, testers: readonly string[]) =>
    `${plural('take', takes)} fewer by ${by(testers)}`,
  relabelled: (takes: number) => `${plural('take', takes)} relabelled`,
  with: (gestures: readonly string[]) => `with ${gestures.join(', ')}`,
  without: (gestures: readonly string[]) => `without ${gestures.join(', ')}`,
  setting: (what: ComparedSetting, before: unknown, after: unknown) =>
    `${SETTINGS[what]} ${said(before)} → ${said(after)}`,
}
