import { expect, test } from 'vitest'
import { latencySentence } from '../../../src/shared/words/en/latency'
import { event } from '../present/present.fixture'

const times = {
  gestureDistances: null,
  startMs: 1000,
  endMs: 2200,
  decidedMs: 2345,
  latencyMs: 152,
}
const plain = (text: string) => text.replaceAll('\u202f', ' ')

test('the wait for rest and the way to the screen add up to the latency', () => {
  expect(plain(latencySentence({ event: event({}), ...times }))).toBe(
    'Answered 152 ms after the movement’s end: 145 ms until the rest was sure, 7 ms to get here. The movement took 1200 ms.',
  )
})

test('a movement that was given up has no end to count from', () => {
  const long = event({ kind: 'reject', reason: 'long' })
  expect(plain(latencySentence({ event: long, ...times }))).toBe(
    'Given up after 1200 ms without rest; 7 ms to get here.',
  )
})

test('clocks that disagree never give a negative part', () => {
  const sentence = latencySentence({ event: event({}), ...times, latencyMs: 100 })
  expect(sentence).not.toContain('-')
})
