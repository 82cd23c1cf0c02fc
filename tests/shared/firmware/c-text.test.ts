import { strToU8 } from 'fflate'
import { describe, expect, test } from 'vitest'
import {
  commentText,
  identifierTails,
  numberRows,
  stringLiteral,
} from '../../../src/shared/firmware/c-text'

describe('identifierTails', () => {
  test('are upper-case ASCII without accents', () => {
    expect(identifierTails(['Raise', 'pour slowly', 'Élan', '3 knocks!'])).toEqual([
      'RAISE',
      'POUR_SLOWLY',
      'ELAN',
      '3_KNOCKS',
    ])
  })

  test('all differ, also for names C cannot tell apart or write', () => {
    const tails = identifierTails(['a b', 'A-B', '持ち上げる', '✦', '', '3', 'count'])
    expect(new Set(tails).size).toBe(7)
    for (const tail of tails) expect(`X_${tail}`).toMatch(/^[A-Za-z_][A-Z0-9_]*$/)
    expect(tails).not.toContain('COUNT')
  })
})

test('a comment cannot be ended, opened, continued or turned into a trigraph', () => {
  const text = commentText('a */ b /* c \\\n d ??/ e \u2028 f')
  expect(text).not.toMatch(/\*\/|\/\*|\\|\?\?|[\n\u2028]/)
})

test('no text of up to six of the characters that matter in a comment gets out of it', () => {
  let texts = ['']
  for (let length = 1; length <= 6; length++) {
    texts = texts.flatMap((text) => [...'*/\\? '].map((next) => text + next))
    expect(texts.filter((text) => /\*\/|\/\*|\\|\?\?/.test(commentText(text)))).toEqual([])
  }
})

test('a string literal holds the UTF-8 with octal escapes, which end after three digits', () => {
  expect(stringLiteral('a"b\\c?1é2', strToU8)).toBe('"a\\042b\\134c\\0771\\303\\2512"')
})

test('rows of numbers keep to 96 characters a line', () => {
  const rows = numberRows(new Int8Array(100).fill(-128)).split('\n')
  expect(rows.every((row) => row.length <= 96)).toBe(true)
  expect(rows.join('').split(',').length).toBe(101)
})
