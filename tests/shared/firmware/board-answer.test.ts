import { describe, expect, test } from 'vitest'
import { compareBoardAnswer } from '../../../src/shared/firmware/board-answer'
import { causeOf } from '../../../src/shared/firmware/difference-cause'
import { expectedSelfTestLog } from '../../../src/shared/firmware/self-test-log'
import type { Vector } from '../../../src/shared/firmware/vector'

const HASH = 'ab12'
const EVENT = 'event 62 155 gesture 0 none aligned 478 1142 1 1600'
const vector = (name: string, log: string): Vector => ({
  name,
  why: `Shows ${name}.`,
  from: '',
  steps: [],
  log,
})
const VECTORS = [
  vector('raise', `init 0\n${EVENT}\nend 215\n`),
  vector('still', 'init 0\nend 512\n'),
  vector('bytes-whole', 'read 0\ninit 0\nend 0\n'),
]
const LOG = expectedSelfTestLog(HASH, VECTORS)
const answer = (text: string) => compareBoardAnswer(text, HASH, VECTORS)
const differing = (from: string, to: string) => {
  const found = answer(LOG.replace(from, to))
  return found.kind === 'differs' ? found.difference : null
}

describe('what a board printed', () => {
  test('agrees when it is what the phone says', () => {
    expect(answer(LOG)).toMatchObject({ kind: 'agrees', agreed: 3, ran: 3, of: 3, missing: [] })
  })

  test('agrees with prompts, carriage returns, comments and a boot message around it', () => {
    const typed = LOG.replaceAll('\n', '\r\n').replace('init 0', '>>>init 0')
    expect(answer(`boot 3.1\r\n# hello\r\n${typed}$ `)).toMatchObject({ kind: 'agrees' })
  })

  test('counts from its last start when the board was reset', () => {
    expect(answer(`${LOG.slice(0, 60)}\n${LOG}`)).toMatchObject({ kind: 'agrees' })
    expect(answer(`${LOG}${LOG.slice(0, 60)}`)).toMatchObject({ kind: 'part' })
  })

  test('with fewer vectors agrees in part and names the others', () => {
    const few = LOG.replace('vector 02-still\ninit 0\nend 512\n', '')
    expect(answer(few)).toMatchObject({ kind: 'part', agreed: 2, ran: 2, missing: ['02-still'] })
  })

  test('that breaks off agrees up to there', () => {
    const broken = answer(LOG.slice(0, LOG.indexOf('init 0\nend 0')))
    expect(broken).toMatchObject({ kind: 'part', difference: null })
    expect(broken.message).toContain('breaks off')
  })

  test('of another model is told before anything is compared', () => {
    expect(answer(LOG.replace(HASH, 'cd34'))).toMatchObject({ kind: 'other-model', found: 'cd34' })
  })

  test('that is no self-test log, or of another version of it, is said to be none', () => {
    for (const text of ['', 'hello', LOG.replace('movewright 1', 'movewright 2')]) {
      expect(answer(text).kind).toBe('unreadable')
    }
  })

  test('is shown at its first difference, with what the vector shows', () => {
    expect(differing('478 1142', '479 1142')).toMatchObject({
      vector: '01-raise',
      why: 'Shows raise.',
      line: 2,
      expected: EVENT,
      found: EVENT.replace('478', '479'),
    })
    expect(differing('end 512', 'end 509')?.cause).toContain('3 of 512 samples')
  })

  test('that lacks a line in the middle differs, that has one too many as well', () => {
    expect(differing(`${EVENT}\n`, '')?.expected).toBe(EVENT)
    expect(differing('end 512\n', 'end 512\nend 512\n')).toMatchObject({ expected: '', line: 3 })
  })
})

describe('the cause of a first difference', () => {
  test.each([
    ['a lost movement', EVENT, 'end 200', 'saw no movement'],
    ['a movement too many', 'end 512', EVENT, 'where there is none'],
    ['a cut elsewhere', EVENT, EVENT.replace('62', '61'), 'cut elsewhere'],
    ['another distance', EVENT, EVENT.replace('478', '9'), 'tables in flash'],
    ['another threshold', EVENT, EVENT.replace('1142', '9'), 'not of one export'],
    ['unknown gravity', EVENT, EVENT.replace('aligned', 'no-rest'), 'Gravity'],
    ['a refused start', 'init 0', 'init -3', 'a rate more than 5 % off'],
    [
      'another threshold taught',
      'taught done 3 5 2044 594 1533',
      'taught done 3 5 2044 594 1188',
      'Teaching computed otherwise',
    ],
    [
      'a taught movement lost',
      'taught more 2 5 2044 0 0',
      'end 200',
      'another number of movements',
    ],
    ['bytes on AVR', 'read 0', 'read -5', 'MVW_TABLES_IN_RAM'],
    ['an end too early', 'end 512', '', 'stopped or reset'],
    ['samples twice', 'end 512', 'end 513', 'sent twice'],
  ])('names %s', (_, expected, found, words) => {
    expect(causeOf(expected, found)).toContain(words)
  })
})
