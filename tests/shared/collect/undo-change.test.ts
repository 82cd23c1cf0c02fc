import { expect, test } from 'vitest'
import { undoChange } from '../../../src/shared/collect/undo-change'
import { withdrawTester } from '../../../src/shared/collect/withdraw'
import { sampleLibrary } from '../format/sample-library'
import { sampleSession } from './samples'

const AT = '2026-11-25T20:00:00Z'
const before = sampleLibrary().library
const first = sampleSession()
const second = sampleSession({
  id: '2'.repeat(32),
  testerKey: '2'.repeat(32),
  testerCode: 'B7Q4MX0',
})

test('a change taken back at once leaves nothing of it', () => {
  const gestures = [...before.gestures, { id: 'pour', name: 'Pour', note: '' }]
  const after = { ...before, gestures, sessions: [first], withdrawals: [] }
  expect(undoChange(after, before, after)).toEqual(before)
})

test('a merge taken back after a tester withdrew leaves the withdrawal in force', () => {
  const had = { ...before, sessions: [first] }
  const merged = { ...had, sessions: [first, second] }
  const { library: now } = withdrawTester(merged, [], first.testerCode, AT)
  const undone = undoChange(now, had, merged)
  expect(undone.sessions).toEqual([])
  expect(undone.withdrawals?.map(({ key }) => key)).toContain(first.testerKey)
})

test('a withdrawal taken back brings the sessions back and leaves others alone', () => {
  const had = { ...before, sessions: [first, second], withdrawals: [] }
  const { library: after } = withdrawTester(had, [], first.testerCode, AT)
  const later = withdrawTester(after, [], second.testerCode, AT).library
  const undone = undoChange(later, had, after)
  expect(undone.sessions).toEqual([first])
  expect(new Set(undone.withdrawals?.map(({ testerCode }) => testerCode))).toEqual(
    new Set([second.testerCode]),
  )
})
