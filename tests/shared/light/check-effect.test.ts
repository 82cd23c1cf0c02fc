import { expect, test } from 'vitest'
import { checkEffect } from '../../../src/shared/light/check-effect'
import type { LightKey } from '../../../src/shared/model/light'
import { effect } from './examples'

const key = (atMs: number): LightKey => ({ atMs, level: 9, colour: [1, 2, 3], ease: 'smooth' })
const keyed = (...times: number[]) =>
  checkEffect(effect({ kind: 'keys', periodMs: times.at(-1) ?? 20, keys: times.map(key) }))

test('a sound effect passes', () => {
  expect(checkEffect(effect({ kind: 'steady' })).ok).toBe(true)
  expect(keyed(0, 10, 500).ok).toBe(true)
})

test('keyframes out of order are refused with both times', () => {
  expect(keyed(0, 400, 200)).toMatchObject({
    code: 'light/key-time',
    message: 'Keyframe 3 is at 200 ms, before keyframe 2 at 400 ms: put them in order of time.',
  })
})

test('0 ms between keyframes, a round of 0 ms and a late first keyframe are refused', () => {
  expect(keyed(0, 0)).toMatchObject({ code: 'light/key-time' })
  expect(checkEffect(effect({ kind: 'steady', periodMs: 0 }))).toMatchObject({
    code: 'light/period',
    message: expect.stringContaining('this one 0 ms'),
  })
  expect(keyed(5, 50)).toMatchObject({ message: expect.stringContaining('must be at 0 ms') })
})

test('10,000 keyframes are refused with the limit', () => {
  expect(keyed(...Array.from({ length: 10_000 }, (_, i) => i * 10))).toMatchObject({
    code: 'light/keys',
    message: expect.stringContaining('2 to 64 keyframes, this one has 10000'),
  })
})

test('brightness and colour outside of a byte, and dim above bright, are refused', () => {
  expect(checkEffect(effect({ kind: 'steady', colour: [256, 0, 0] }))).toMatchObject({
    code: 'light/range',
  })
  expect(checkEffect(effect({ kind: 'breathe', low: 9, high: 8 }))).toMatchObject({
    code: 'light/levels',
  })
  expect(checkEffect(effect({ kind: 'steady', rounds: -1 }))).toMatchObject({ code: 'light/range' })
})
