import { expect, test } from 'vitest'
import { ageText } from '../../../src/shared/words/en/age-words'

const AT = '2026-11-25T12:00:00.000Z'
const after = (minutes: number) => ageText(AT, Date.parse(AT) + minutes * 60_000)

test('an age is told in the largest unit that is full', () => {
  expect(after(0.5)).toBe('just now')
  expect(after(1)).toBe('1 minute ago')
  expect(after(59)).toBe('59 minutes ago')
  expect(after(60)).toBe('1 hour ago')
  expect(after(24 * 60 - 1)).toBe('23 hours ago')
  expect(after(24 * 60)).toBe('1 day ago')
  expect(after(100 * 24 * 60)).toBe('100 days ago')
})

test('a clock that was put back, or a time that is none, is no age', () => {
  expect(after(-60)).toBe('just now')
  expect(ageText('yesterday', Date.parse(AT))).toBe('just now')
})
