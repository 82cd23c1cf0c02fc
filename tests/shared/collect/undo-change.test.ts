import { describe, expect, test } from 'vitest'
import { changeLabels, headsOf, historyOf } from '../../../src/shared/collect/history'
import { undoChange, undoRecording } from '../../../src/shared/collect/undo-change'
import { withdrawTester } from '../../../src/shared/collect/withdraw'
import { sampleLibrary } from '../format/sample-library'
import { sampleSession, sampleSessionFile } from './samples'

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

test('a gesture that a change added stays while takes use it', () => {
  const added = ['pour', 'knock'].map((id) => ({ id, name: id, note: '' }))
  const after = { ...before, gestures: [...before.gestures, ...added] }
  const undone = undoChange(after, before, after, new Set(['pour']))
  expect(undone.gestures).toEqual([...before.gestures, added[0]])
})

describe('labels of a recording taken back', () => {
  const own = { ...sampleSessionFile(1).recordings[0]!.recording, contentId: 'c'.repeat(64) }
  let count = 0
  const newId = () => String(++count).padStart(32, '0')
  const brought = changeLabels(own, { hand: 'left' }, '2026-11-25T20:01:00Z', newId)

  test('are as they were, history included', () => {
    expect(undoRecording(brought, own, brought)).toEqual(own)
  })

  test('stay where they were edited since, with one value that counts', () => {
    const edit = { hand: 'unknown', note: 'lamp was low' } as const
    const now = changeLabels(brought, edit, '2026-11-25T20:02:00Z', newId)
    const undone = undoRecording(now, own, brought)
    expect(undone).toMatchObject({ ...edit, contentId: own.contentId })
    expect(headsOf(historyOf(undone), 'hand').map(({ value }) => value)).toEqual(['unknown'])
    expect(historyOf(undone).map(({ value }) => value)).not.toContain('left')
  })
})
