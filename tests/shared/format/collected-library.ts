import { contentId } from '../../../src/shared/collect/content-id'
import type { FullLibrary, Library } from '../../../src/shared/model/library'
import type { Answer, LightSettings } from '../../../src/shared/model/light'
import { samplePlan, sampleSession } from '../collect/samples'
import { sampleLibrary } from './sample-library'

const AT = '2026-11-25T19:00:00Z'

const glow: Answer = {
  light: {
    kind: 'keys',
    rule: 'after-round',
    next: 'ring',
    low: 0,
    high: 200,
    colour: [255, 120, 0],
    hue: 20,
    turn: 85,
    rounds: 2,
    periodMs: 900,
    fadeMs: 150,
    keys: [
      { atMs: 0, level: 0, colour: [255, 120, 0], ease: 'smooth' },
      { atMs: 900, level: 200, colour: [255, 60, 0], ease: 'step' },
    ],
  },
  sound: [
    { value: 880, ms: 120 },
    { value: 0, ms: 60 },
  ],
  vibration: [{ value: 255, ms: 80 }],
}
const quiet: Answer = {
  light: { ...glow.light, kind: 'steady', rule: 'at-once', next: null, rounds: 0, keys: [] },
  sound: [],
  vibration: [],
}
const emitter = { forwardV: { min: 1.8, typ: 2, max: 2.4 }, currentMa: 15, resistorOhm: 68 }

const light: LightSettings = {
  answers: { idle: quiet, reject: quiet, low: quiet },
  minChangeMs: 600,
  led: {
    pwmHz: 1000,
    pwmBits: 8,
    emitters: [emitter, emitter, emitter],
    limitMa: 40,
    driverOhm: 0.5,
  },
  power: {
    cell: 'custom',
    series: 3,
    capacityMah: { min: 700, typ: 800, max: 900 },
    freshV: 1.6,
    nominalV: 1.2,
    endV: 1,
    cellOhm: 0.15,
    maxMa: 500,
    selfDischargePercent: 20,
    supply: 'boost',
    boostV: 3.3,
    boostEfficiency: 0.85,
    processorMa: { min: 1, typ: 2, max: 3 },
    sensorMa: { min: 0.4, typ: 0.6, max: 0.9 },
    standbyMa: { min: 0.1, typ: 0.2, max: 0.3 },
    offUa: { min: 1, typ: 2, max: 5 },
    answersPerHour: 60,
  },
  acknowledgement: {
    text: 'For a show with a warning at the door.',
    at: AT,
    covers: ['Raise flashes 4.2 times a second.'],
  },
}

/** The sample library with everything that a library of format version 3 may have. */
export function collectedLibrary(): FullLibrary {
  const { library, recordings } = sampleLibrary()
  const [raise, ring] = library.gestures
  const full: Library = {
    ...library,
    gestures: [
      { ...raise!, answer: glow },
      { ...ring!, answer: quiet },
    ],
    target: {
      ...library.target,
      calibration: {
        zero: [12, -7, 30, 0, 3, -3],
        correctionQ14: [16_384, 10, 0, -10, 16_400, 0, 0, 0, 16_300],
      },
    },
    // As it was when files of this were kept, whatever the defaults are now.
    training: {
      templatesPerGesture: 4,
      length: 24,
      bandShare: 0.125,
      rollAlign: true,
      segmentation: 'motion',
      thresholdFactor: 1,
      matcher: 'template',
    },
    light,
    plans: [samplePlan({ folder: 'https://team.example.org/sessions/' })],
    sessions: [sampleSession()],
    withdrawals: [
      ...(['tester', 'session', 'content'] as const).map((kind, n) => ({
        kind,
        key: `${n + 3}`.repeat(kind === 'content' ? 64 : 32),
        why: kind === 'content' ? ('dropped' as const) : ('withdrawn' as const),
        testerCode: 'K7Q4MXB',
        at: AT,
      })),
    ],
  }
  const [first, ...others] = recordings
  const collected = {
    ...first!.recording,
    sessionId: sampleSession().id,
    contentId: contentId(first!.samples),
    history: [{ id: '2'.repeat(32), field: 'note' as const, value: 'low', at: AT, over: [] }],
  }
  return { library: full, recordings: [{ ...first!, recording: collected }, ...others] }
}
