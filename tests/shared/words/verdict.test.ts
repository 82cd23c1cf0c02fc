import { describe, expect, test } from 'vitest'
import type { Replay } from '../../../src/shared/model/replay'
import { noCutSentence, segmenterSentence } from '../../../src/shared/words/en/silence'
import { outcomeText, verdict } from '../../../src/shared/words/en/verdict'
import { event, smallModel } from '../present/present.fixture'

const plain = (text: string) => text.replaceAll('\u202f', ' ')

describe('verdict', () => {
  const model = smallModel()

  test('a recognised gesture is named with its distance, threshold and runner-up', () => {
    const words = verdict(event({}), model)
    expect(words.headline).toBe('Ring')
    expect(words.reason).toBe('distance 540 ≤ 980; next is Swing at 1310')
    expect(words.advice).toBe('')
  })

  test('too far names the nearest gesture and both figures', () => {
    const words = verdict(event({ kind: 'reject', reason: 'far', distance: 1240 }), model)
    expect(words.headline).toBe('None of these')
    expect(words.reason).toBe('too far: nearest is Ring, distance 1240 > 980')
    expect(words.advice).not.toBe('')
  })

  test('ambiguous names both gestures and the margin of the model', () => {
    const far = { kind: 'reject', reason: 'ambiguous', runnerUpDistance: 560 } as const
    expect(verdict(event(far), model).reason).toBe(
      'ambiguous between Ring and Swing: 540 and 560, less than 10 % apart',
    )
  })

  test('too short and too long are told in milliseconds of the target, not in samples', () => {
    const cut = { kind: 'reject', gesture: null, distance: null, start: 100, end: 118 } as const
    expect(plain(verdict(event({ ...cut, reason: 'short' }), model).reason)).toBe(
      'too short: 180 ms, compared from 250 ms',
    )
    expect(plain(verdict(event({ ...cut, reason: 'long' }), model).reason)).toBe(
      'too long: no rest within 2500 ms',
    )
  })

  test('roll is mentioned only when it is not known', () => {
    expect(verdict(event({ roll: 'aligned' }), model).roll).toBe('')
    expect(verdict(event({ roll: 'vertical' }), model).roll).toContain('roll unknown')
    expect(verdict(event({ roll: 'no-rest' }), model).roll).toContain('no rest')
  })
})

describe('segmenterSentence', () => {
  const { segmenter } = smallModel()

  test('motion below the start threshold is told with both figures', () => {
    expect(segmenterSentence(Uint32Array.of(10, 310, 40), 'idle', segmenter)).toBe(
      'Below the start: motion peaked at 310, a movement starts at 520.',
    )
  })

  test('the phase comes before the energy', () => {
    const energy = Uint32Array.of(10, 20)
    expect(segmenterSentence(energy, 'moving', segmenter)).toBe('Inside a movement.')
    expect(segmenterSentence(energy, 'wait-rest', segmenter)).toContain('waiting for rest')
  })

  test('without samples it says so', () => {
    expect(segmenterSentence(new Uint32Array(), 'idle', segmenter)).toBe('No samples yet.')
  })
})

describe('noCutSentence', () => {
  const quiet = (energy: number[], phase: number[]): Replay => ({
    rateHz: 100,
    recordedCount: energy.length,
    counts: new Int16Array(energy.length * 6),
    energy: Uint32Array.from(energy),
    phase: Uint8Array.from(phase),
    onThreshold: 520,
    offThreshold: 260,
    events: [],
    gestureDistances: [],
    queries: [],
  })

  test('tells low motion and a short burst apart', () => {
    expect(noCutSentence(quiet([10, 310, 20], [0, 0, 0]))).toContain('peaked at 310')
    expect(noCutSentence(quiet([10, 900, 20], [0, 0, 0]))).toContain('not long enough')
  })

  test('says nothing when something was cut', () => {
    expect(noCutSentence({ ...quiet([900], [0]), events: [event({})] })).toBe('')
  })
})

describe('outcomeText', () => {
  const gestures = [{ name: 'Ring' }, { name: 'Swing' }]
  const outcome = {
    takeId: 'a',
    testerCode: 'T1',
    truth: 0,
    answer: null,
    nearest: null,
    acceptedFrom: null,
    fold: 0,
  }

  test('a missed take says that nothing was cut', () => {
    const missed = { ...outcome, cut: 'missed', event: null } as const
    expect(outcomeText(missed, gestures)).toBe('no movement was cut out')
  })

  test('a rejected take names the nearest gesture and both figures', () => {
    const far = event({ kind: 'reject', reason: 'far', gesture: 1, distance: 1240 })
    expect(outcomeText({ ...outcome, cut: 'split', event: far }, gestures)).toBe(
      'nearest Swing: 1240 > 980; cut in pieces, the longest decided',
    )
  })
})
