import { describe, expect, it } from 'vitest'
import {
  addHit,
  addTurn,
  emptyTally,
  hitsOf,
  restoreTally,
  totalHits,
} from '../../../src/shared/stage/tally'
import { turnsLine } from '../../../src/shared/words/en/stage-words'

const SINCE = '2026-06-01T19:00:00.000Z'

describe('the tally of an evening', () => {
  const full = addTurn(
    addTurn(addHit(addHit(addHit(emptyTally(SINCE), 'ring'), 'ring'), 'pour'), true),
    false,
  )

  it('counts hits by gesture, and turns', () => {
    expect([hitsOf(full, 'ring'), hitsOf(full, 'pour'), hitsOf(full, 'raise')]).toEqual([2, 1, 0])
    expect(totalHits(full)).toBe(3)
    expect(turnsLine(full.asked, full.right)).toBe('2 turns of visitors, 1 as asked')
  })

  it('has no hits for names that every object has', () => {
    expect(hitsOf(full, 'constructor')).toBe(0)
  })

  it('is restored as it was stored', () => {
    expect(restoreTally(JSON.parse(JSON.stringify(full)))).toEqual(full)
  })

  it.each([
    ['nothing', null],
    ['a text', 'tally'],
    ['no date', { ...full, sinceAt: 'yesterday' }],
    ['more right than asked', { ...full, right: 3 }],
    ['a part of a turn', { ...full, asked: 2.5 }],
    ['no hits', { ...full, hits: 7 }],
  ])('is not restored from %s', (_, stored) => {
    expect(restoreTally(stored)).toBeNull()
  })

  it('leaves out single counts that are none', () => {
    const stored = { ...full, hits: { ring: 2, pour: -1, raise: 'many' } }
    expect(restoreTally(stored)?.hits).toEqual({ ring: 2 })
  })
})
