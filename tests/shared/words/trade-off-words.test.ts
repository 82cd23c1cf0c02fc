import { describe, expect, test } from 'vitest'
import { poissonPerHour } from '../../../src/shared/statistics/poisson'
import { wilson } from '../../../src/shared/statistics/wilson'
import { claimSentence, hoursText, spokenPoint } from '../../../src/shared/words/en/trade-off-words'

const background = (activations: number, hours: number) => {
  const { perHour, low, high } = poissonPerHour(activations, hours)
  return { activations, hours, perHour, low, high, segments: 9, acceptedFrom: [] }
}
const plain = (text: string) => text.replaceAll('\u202f', ' ')

describe('what background is missing for a claim', () => {
  test('is -ln 0.05 hours for one an hour when nothing was activated', () => {
    expect(plain(claimSentence(background(0, 1), 1))).toBe(
      'To claim fewer than 1 an hour (one-sided 95 %, exact Poisson), 2 h more background with no activation are needed.',
    )
  })

  test('asks for no further activation once there was one', () => {
    // R: poisson.test(1, alternative = "less") has the upper limit 4.743865.
    expect(plain(claimSentence(background(1, 1), 1))).toContain(
      '3.7 h more background with no further activation',
    )
  })

  test('is nothing where the hours are enough', () => {
    expect(plain(claimSentence(background(0, 3), 1))).toBe(
      'The 3 h recorded are enough to claim fewer than 1 an hour (one-sided 95 %, exact Poisson).',
    )
  })
})

test('a point is spoken with counts, hours and both intervals', () => {
  const point = { factor: 1, missed: wilson(4, 20), background: background(3, 2) }
  expect(plain(spokenPoint(point))).toBe(
    '20.0 % missed, 4/20 takes, 95 % 8.1 to 41.6 %; 1.5 false activations an hour, 3 activations in 2 h, 95 % 0.31 to 4.4',
  )
  expect(spokenPoint({ ...point, background: null })).toContain('not known')
})

test('hours below one are told in minutes', () => {
  expect(plain(hoursText(0.2))).toBe('12.0 min')
  expect(plain(hoursText(1.5))).toBe('1.5 h')
})
