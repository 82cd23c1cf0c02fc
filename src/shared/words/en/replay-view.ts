import type { AccelSign, Hand, Source } from '../../model/library'
import { durationText, plural, shortNumber, UNIT_SPACE } from './numbers'

/** On the screen of a replay: what was replayed, each movement, the prop's attitude, facts as recorded. */
export const REPLAY_VIEW = {
  title: 'Replay',
  gone: 'This recording is not in the open library: it was removed, or another one is open.',
  replaying: 'Replaying …',
  take: (gesture: string, tester: string, hand: Hand) => `${gesture} ${by(tester, hand)}`,
  background: (tester: string, hand: Hand) => `Background ${by(tester, hand)}`,
  removedGesture: 'A removed gesture',
  lightTooFast:
    'The light is not shown: it is over three flashes a second. Mend it on Prop, Light.',
  allTakes:
    'Run with the model of all takes, this one included when training used it. Held-out decisions are on Proof.',
  asRecorded: 'As recorded',
  attitude: {
    title: 'Attitude',
    estimated:
      'Estimated from what the board read: gyroscope integrated, gravity as anchor with a time constant of 2 s while the accelerometer shows nothing else. It starts pointing ahead.',
    axes: (mounting: string, turnedDeg: number) =>
      `Letters are the prop’s axes, held like the phone. The plate in the handle is the board, its corner block at +x +y: ${mounting}${turnedDeg > 0.5 ? `, turned by ${turnedDeg.toFixed(0)}° from it` : ''}.`,
  },
  event: {
    span: (startMs: number, endMs: number, samples: number) =>
      `${durationText(startMs)} to ${durationText(endMs)}, ${samples} samples`,
    show: 'Show',
  },
  prop: {
    tryAgain: 'Try again',
    noWebgl:
      'This browser draws no 3‑D here (WebGL is off or missing). The traces below show the same.',
    lost: 'The browser took the 3‑D picture away. The traces below go on.',
    notLoaded: 'The 3‑D picture could not be loaded. The traces below show the same.',
    label: 'The prop in its attitude at the play head',
  },
  transport: {
    phases: {
      idle: 'at rest',
      moving: 'inside a movement',
      'wait-rest': 'waiting for rest',
    },
    sample: (sample: number, phase: string, added: boolean) =>
      `sample ${sample}, ${phase}${added ? '; stillness added after the recording' : ''}`,
    seconds: (seconds: number) => `${seconds.toFixed(2)}${UNIT_SPACE}s`,
    pause: 'Pause',
    play: 'Play',
    speed: 'Speed',
    speedOf: (pace: string) => `Speed ${pace}`,
    loop: 'Loop',
  },
  facts: {
    recorded: {
      name: 'Recorded',
      text: (samples: number, durationMs: number) =>
        `${plural('sample', samples)} in ${durationText(durationMs)}`,
    },
    rate: { name: 'Rate', text: (rateHz: number) => (rateHz > 0 ? hertz(rateHz) : 'not known') },
    replayedAt: { name: 'Replayed at', text: hertz },
    roundedTo: {
      name: 'Rounded to',
      text: (accelStepMps2: number, gyroStepDps: number) =>
        accelStepMps2 === 0 && gyroStepDps === 0
          ? 'no step found'
          : `${step(accelStepMps2, 'm/s²')}, ${step(gyroStepDps, 'deg/s')}`,
    },
    sign: {
      name: 'Sign of acceleration',
      text: {
        '0': 'not found out: lay the phone flat once',
        '1': 'as the standard has it',
        '-1': 'inverted, turned round here',
      } satisfies Record<AccelSign, string>,
    },
    gaps: {
      name: 'Gaps',
      text: (count: number, longestMs: number) =>
        count === 0 ? 'none' : `${count}, longest ${durationText(longestMs)}`,
    },
    clipped: {
      name: 'Clipped at the target’s range',
      text: (accel: number, gyro: number) =>
        accel === 0 && gyro === 0
          ? 'nothing'
          : `${plural('value', accel)} of acceleration, ${gyro} of turning: choose a larger range`,
    },
    source: {
      name: 'Source',
      text: (source: Source, device: string) =>
        device === '' ? SOURCES[source] : `${SOURCES[source]}, ${device}`,
    },
  },
}

const SOURCES: Record<Source, string> = {
  phone: 'phone',
  simulated: 'simulated',
  generated: 'generated',
  imported: 'imported',
  board: 'board',
}

const HANDS: Record<Hand, string> = {
  left: ', left hand',
  right: ', right hand',
  unknown: '',
}

function by(tester: string, hand: Hand): string {
  return `by ${tester}${HANDS[hand]}`
}

function hertz(rateHz: number): string {
  return `${shortNumber(rateHz)}${UNIT_SPACE}Hz`
}

function step(size: number, unit: string): string {
  return size === 0 ? `no step (${unit})` : `${shortNumber(size)}${UNIT_SPACE}${unit}`
}
