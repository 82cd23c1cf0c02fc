import type { CoreEvent } from '../../../src/shared/core/core'
import type { Evaluation, Rate, TakeOutcome } from '../../../src/shared/model/evaluation'
import type { RecogniserModel } from '../../../src/shared/model/recogniser-model'

/** A model of three gestures at 100 Hz, margin 10 %. */
export function smallModel(): RecogniserModel {
  const gesture = (name: string, threshold: number) => ({
    id: name.toLowerCase(),
    name,
    threshold,
    templates: [],
    templateTakeIds: [],
  })
  return {
    rollAlign: true,
    button: false,
    board: { rateMillihertz: 100_000, accelNgPerLsb: 122_000, gyroNdpsPerLsb: 35_000_000 },
    segmenter: {
      accelWeight: 256,
      gyroWeight: 64,
      onThreshold: 520,
      offThreshold: 260,
      onHold: 3,
      offHold: 12,
      minLength: 25,
      maxLength: 250,
      preRoll: 5,
      refractory: 10,
      accelLag: 2,
      smoothShift: 2,
      restShift: 5,
    },
    normaliser: {
      length: 32,
      channelMask: 63,
      centreMask: 7,
      scaleMode: 1,
      gain: [32, 32, 32, 32, 32, 32],
      gravityGain: 32,
      floor: [100, 100],
    },
    longAxis: 1,
    rollMinPercent: 26,
    band: 5,
    cost: 0,
    marginPercent: 10,
    gestures: [gesture('Ring', 980), gesture('Swing', 1100), gesture('Pour', 700)],
    kernel: null,
  }
}

export function event(change: Partial<CoreEvent>): CoreEvent {
  return {
    kind: 'gesture',
    reason: 'none',
    roll: 'aligned',
    gesture: 0,
    runnerUp: 1,
    start: 100,
    end: 180,
    distance: 540,
    threshold: 980,
    runnerUpDistance: 1310,
    ...change,
  }
}

/** Interval ends are given and not computed: they are not what is tested here. */
export function rate(hits: number, n: number): Rate {
  return { hits, n, value: hits / n, low: 0, high: 1 }
}

/** An evaluation from rows of [truth, answer, how many]. */
export function evaluation(rows: [number, number | null, number][]): Evaluation {
  const gestures = ['Ring', 'Swing', 'Pour'].map((name) => ({ id: name.toLowerCase(), name }))
  const confusion = gestures.map(() => [0, 0, 0, 0])
  const outcomes: TakeOutcome[] = []
  for (const [truth, answer, count] of rows) {
    confusion[truth][answer ?? 3] += count
    for (let i = 0; i < count; i++) {
      const takeId = `take-${outcomes.length}`
      outcomes.push({
        takeId,
        testerCode: 'T1',
        truth,
        answer,
        nearest: answer,
        acceptedFrom: answer === null ? null : 0.9,
        cut: 'ok',
        event: null,
        fold: 0,
      })
    }
  }
  const right = outcomes.filter((outcome) => outcome.truth === outcome.answer).length
  return {
    holdout: 'tester',
    thresholdFactor: 1,
    gestures,
    testers: ['T1', 'T2'],
    confusion,
    accuracy: rate(right, outcomes.length),
    rejected: rate(0, outcomes.length),
    scores: gestures.map(({ id, name }, index) => {
      const n = confusion[index].reduce((sum, count) => sum + count, 0)
      return {
        gestureId: id,
        name,
        recall: rate(confusion[index][index], n),
        precision: rate(1, 1),
      }
    }),
    outcomes,
    skipped: [],
    background: {
      hours: 1,
      activations: 0,
      perHour: 0,
      low: 0,
      high: 3.69,
      segments: 4,
      acceptedFrom: [],
    },
    folds: [],
  }
}
