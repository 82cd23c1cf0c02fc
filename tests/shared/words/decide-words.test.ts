import { describe, expect, test } from 'vitest'
import type { DataDecision } from '../../../src/shared/decide/data-decision'
import {
  ADVICE_KINDS,
  type GestureDecision,
  type PairReport,
} from '../../../src/shared/decide/gesture-decision'
import { largestGoodSize, setPoint } from '../../../src/shared/present/kept-sets'
import { wilson } from '../../../src/shared/statistics/wilson'
import {
  DATA_ABOUT,
  dataBasis,
  dataSentence,
  gainText,
  nextSentence,
} from '../../../src/shared/words/en/data-words'
import {
  adviceText,
  adviceTitle,
  gesturesBasis,
  gesturesSentence,
  whereText,
} from '../../../src/shared/words/en/pair-words'
import { SENSOR_ABOUT } from '../../../src/shared/words/en/sensor-words'
import {
  provenSentence,
  setSentence,
  setsBasis,
  spokenSet,
} from '../../../src/shared/words/en/subset-words'

const margin = { value: 0.1, low: 0, high: 0.2, n: 96 }
const pair: PairReport = {
  first: 0,
  second: 1,
  told: {
    recogniser: wilson(60, 96),
    shape: wilson(50, 96),
    accelerometer: wilson(48, 96),
    unaligned: wilson(95, 96),
  },
  margin,
  courseMargin: margin,
  turningDps: 40,
  byDuration: wilson(90, 96),
  bySize: wilson(88, 96),
  byTurn: wilson(48, 96),
  pieces: { whole: 1, part: 0, rate: wilson(20, 48) },
  advice: null,
}

/** Two points of two axes: apart by four deviations at the end of the second one. */
const profile = (gesture: number, last: number) => ({
  gesture,
  takes: 48,
  mean: [0, 0, 0, last],
  deviation: [10, 10, 10, 10],
  durationMs: { low: 900, middle: gesture === 0 ? 1000 : 1800, high: 1100, n: 48 },
})

const decision: GestureDecision = {
  holdout: 'tester',
  gestures: [
    { id: 'raise', name: 'Raise' },
    { id: 'lift', name: 'Lift' },
  ],
  testers: ['T01', 'T02'],
  takes: 96,
  uncut: 0,
  accuracy: wilson(60, 96),
  pairs: [pair],
  profiles: [profile(0, 0), profile(1, 40)],
  length: 2,
  channels: 2,
  subsets: [],
}

describe('advice on a pair', () => {
  test.each(ADVICE_KINDS)('names both, how often and of how many, and what to do: %s', (advice) => {
    const text = adviceText(decision, { ...pair, advice })
    expect(text).toContain('Raise')
    expect(text).toContain('Lift')
    expect(text).toMatch(/\d\u202f%.*of held-out takes \(\d+\/\d+, [\d.]+ to [\d.]+\u202f%\)/)
    expect(text).toMatch(/drop|mark|Keep/)
    expect(gesturesSentence({ ...decision, pairs: [{ ...pair, advice }] })).toContain(
      adviceTitle(advice),
    )
  })

  test('speed is told with both durations', () => {
    expect(adviceText(decision, { ...pair, advice: 'speed' })).toContain(
      'median 1000\u202fms and 1800\u202fms',
    )
  })

  test('where two differ is a part of the movement and an axis, and where not is said too', () => {
    const text = whereText(decision, pair)
    expect(text).toContain('at the end on acceleration y: 4 standard deviations')
    expect(text).toContain('Alike all along on acceleration x.')
  })
})

describe('a set that was chosen by its figure', () => {
  const set = {
    members: [0, 1],
    score: 1,
    worstPair: 0.99,
    worst: null,
    proven: true,
    bound: 1,
    unseen: wilson(180, 200),
  }

  test('stands in the plot by the takes of testers who had no say in it, with their interval', () => {
    const { value, low, high } = setPoint(set)
    expect([value, low, high]).toEqual([0.9, set.unseen.low, set.unseen.high])
    expect(spokenSet(set)).toBe('2: 90.0\u202f% (85.1 to 93.4\u202f%)')
    expect(setsBasis([set])).toContain('without whom the set was chosen')
  })

  test('with one tester has no interval, and says on which takes it is', () => {
    const alone = { ...set, unseen: wilson(0, 0) }
    const { value, low, high } = setPoint(alone)
    expect([value, low, high]).toEqual([1, 1, 1])
    expect(spokenSet(alone)).toBe('2: 100\u202f% on the takes it was chosen by')
    expect(setsBasis([alone])).toContain('no interval')
  })

  test('is not the size to keep when others do worse with it', () => {
    const small = { ...set, members: [0], unseen: wilson(198, 200) }
    expect(largestGoodSize([small, set])).toBe(1)
    expect(setSentence(decision, { ...set, members: [0] })).toContain(
      'of the takes it was chosen by',
    )
  })
})

test('shares say what was held out and over what their intervals are', () => {
  const alone = { ...decision, holdout: 'take' as const, testers: ['T01'] }
  expect(gesturesBasis(decision)).toContain('Intervals are 95 %, over testers.')
  expect(gesturesBasis(alone)).toContain('Intervals are 95 %, over takes of the one tester.')
  expect(gesturesBasis(decision)).toContain('cut and compared was learned on all of them')
})

test('what is held out with one tester is said before anything is measured', () => {
  expect(SENSOR_ABOUT).toContain('or takes where there is one tester')
  expect(DATA_ABOUT).toContain('or takes where there is one tester')
})

test('a set that was searched in part is said to be, with what none can exceed', () => {
  const set = {
    members: [0],
    score: 0.9,
    worstPair: 1,
    worst: null,
    proven: false,
    bound: 0.95,
    unseen: wilson(0, 0),
  }
  expect(provenSentence(set)).toContain('no set of this size has more than 95.0')
  expect(setSentence(decision, set)).toContain('leave out Lift')
})

describe('what to record next', () => {
  const data: DataDecision = {
    holdout: 'tester',
    gestures: decision.gestures,
    testers: ['T01', 'T02', 'T03'],
    takes: { points: [], next: 10, gain: { value: 0.004, low: -0.01, high: 0.02 } },
    byTesters: { points: [], next: 4, gain: { value: 0.02, low: 0.01, high: 0.03 } },
    errors: [{ gesture: 1, wrong: 9, rate: wilson(15, 24) }],
    background: { hours: 0.2, activations: 4, low: 5.4, high: 51 },
    next: ['tester', 'background'],
  }

  test('is an estimate with its range, and says when it may be none', () => {
    expect(dataSentence(data)).toBe('One more tester: estimated gain 2 points (1 to 3).')
    expect(gainText(data.takes!.gain!)).toBe('gain 0.4 points, which may be none (−1 to 2)')
    expect(nextSentence(data, 'takes')).toContain('Begin with Lift: 9 of the 9 takes')
  })

  test('bars are said to be over takes where there is one tester', () => {
    expect(dataBasis(data)).toContain('bars are 95 %, over testers.')
    expect(dataBasis({ ...data, holdout: 'take', testers: ['T01'] })).toContain(
      'bars are 95 %, over takes of the one tester.',
    )
  })

  test('background is asked for by the hours that a claim still needs', () => {
    // 9.154 / 1 - 0.2: the one-sided 95 % limit of 4 events (Garwood) is 9.154.
    expect(nextSentence(data, 'background')).toContain('9\u202fh more without one')
  })
})
