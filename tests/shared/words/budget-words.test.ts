import { expect, test } from 'vitest'
import { PARTS, type Part } from '../../../src/shared/budget/parts'
import { budgetRows, savingLine } from '../../../src/shared/words/en/budget-words'
import { exampleModel } from '../../core/example-model'

const part = (key: string) => PARTS.find((one) => one.key === key) as Part
const plain = (text: string) => text.replaceAll('\u202f', ' ')

test('each line of the budget says how it is known and what it is made of', () => {
  const rows = budgetRows(exampleModel({ cost: 0 }), part('m0-64'))
  expect(rows.map(({ label, known }) => [label, known])).toEqual([
    ['Flash', 'measured'],
    ['RAM', 'measured'],
    ['Longest decision', 'estimated'],
    ['Processor busy', 'estimated'],
    ['Charge a day', 'estimated'],
  ])
  expect(plain(rows[0]?.value ?? '')).toMatch(/^[\d. ]+ (B|KiB) of 64\.0 KiB$/)
  expect(plain(rows[0]?.note ?? '')).toMatch(/^code .+, tables 600 B \(counted\)$/)
  expect(plain(rows[2]?.note ?? '')).toMatch(
    /^normalising [\d.]+ %, warping [\d.]+ %; instructions/,
  )
  expect(plain(rows[3]?.value ?? '')).toMatch(/^[\d.]+ %$/)
})

test('a duty too small to matter is said to be under a figure, not nought', () => {
  const rows = budgetRows(exampleModel({ cost: 0, board: { rateMillihertz: 1000 } }), {
    ...part('m33-512'),
    clockHz: 1e9,
  })
  expect(plain(rows[3]?.note ?? '')).toContain('under 0.01 % while nothing moves')
})

test('a saving names the change and what the budget is then', () => {
  const line = savingLine({
    what: 'templates',
    message: '3 templates a gesture, not 4',
    flashBytes: 9000,
    ramBytes: 2000,
    decisionMs: 12.34,
  })
  expect(plain(line)).toBe('3 templates a gesture, not 4: 9000 B flash, 2000 B RAM, 12.3 ms')
})
