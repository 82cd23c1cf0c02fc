import { describe, expect, it } from 'vitest'
import { Ledger } from '../../src/build/bench/kills/ledger'
import type { Found } from '../../src/build/bench/kills/words'

const mark = (id: string, samples = 60) => ({ id, samples, hash: samples * 7 })
const found = (takes: Found['takes'], unfinished: Found['unfinished'] = []) => ({
  takes,
  unfinished,
})
const there = (id: string, label = 0, samples = 60) => ({ ...mark(id, samples), label })

describe('the counter of losses', () => {
  it('counts a take that was promised and is missing or altered, once', () => {
    const ledger = new Ledger()
    ledger.hear({ is: 'stored', takes: [mark('a'), mark('b'), mark('c')] })
    expect(ledger.check(found([there('a'), there('b', 0, 59)])).takes).toBe(2)
    expect(ledger.check(found([there('a'), there('b', 0, 59)])).takes).toBe(0)
  })

  it('counts a take that was found once and is gone later', () => {
    const ledger = new Ledger()
    ledger.check(found([there('a')]))
    expect(ledger.check(found([])).takes).toBe(1)
  })

  it('counts an addition of which only a part is there', () => {
    const ledger = new Ledger()
    ledger.hear({ is: 'adding', ids: ['a', 'b'] })
    ledger.hear({ is: 'adding', ids: ['c', 'd'] })
    expect(ledger.check(found([there('a'), there('c'), there('d')])).halves).toBe(1)
  })

  it('measures what a recording under way lost, from the last sample to the journal', () => {
    const ledger = new Ledger()
    ledger.hear({ is: 'sample', id: 'a', tMs: 2500 })
    expect(ledger.check(found([], [{ id: 'a', lastMs: 1800 }])).seconds).toBeCloseTo(0.7, 9)
    ledger.hear({ is: 'sample', id: 'b', tMs: 2500 })
    expect(ledger.check(found([])).seconds).toBeCloseTo(2.5, 9)
    expect(ledger.check(found([])).seconds).toBeNull()
  })

  it('counts a label that has gone back, and not one that is newer than what was told', () => {
    const ledger = new Ledger()
    ledger.hear({ is: 'labelled', id: 'a', label: 7 })
    expect(ledger.check(found([there('a', 8)])).labels).toBe(0)
    ledger.hear({ is: 'labelled', id: 'a', label: 9 })
    expect(ledger.check(found([there('a', 8)])).labels).toBe(1)
  })
})
