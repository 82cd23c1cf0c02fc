import { describe, expect, it } from 'vitest'
import { Ledger } from '../../src/build/bench/kills/ledger'
import { NO_SESSION_LOSSES, SessionLedger } from '../../src/build/bench/kills/session-ledger'
import type { Found, FoundSession } from '../../src/build/bench/kills/words'

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

const session = (kept: FoundSession['kept'], change: Partial<FoundSession> = {}): FoundSession => ({
  ...{ id: 's', kept, shown: kept.length, unasked: 0, isHome: false },
  takes: kept.map(({ recordingId }) => recordingId),
  ...change,
})
const at = (...ids: string[]) => ids.map((recordingId, place) => ({ at: place, recordingId }))

/** A counter that was told that a session stands at these takes. */
function told(...ids: string[]): SessionLedger {
  const ledger = new SessionLedger()
  ledger.hear({ is: 'stands', session: { id: 's', kept: at(...ids) } })
  return ledger
}

describe('the counter of what sessions lost', () => {
  it('counts nothing where a session stands where it stood, or one take further', () => {
    expect(told('a', 'b').check([session(at('a', 'b'))])).toEqual(NO_SESSION_LOSSES)
    expect(told('a', 'b').check([session(at('a', 'b', 'c'))])).toEqual(NO_SESSION_LOSSES)
  })

  it('counts a take that the session has lost, and its progress', () => {
    const lost = { ...NO_SESSION_LOSSES, takes: 1, progress: 1 }
    expect(told('a', 'b').check([session(at('a'))])).toEqual(lost)
  })

  it('counts a progress bar that shows another number, and a session that ran ahead', () => {
    const wrong = { ...NO_SESSION_LOSSES, progress: 1 }
    expect(told('a').check([session(at('a'), { shown: 0 })])).toEqual(wrong)
    expect(told('a').check([session(at('a', 'b', 'c'))])).toEqual(wrong)
  })

  it('counts a take at another prompt than its own, and one that was not asked for', () => {
    const moved = { ...NO_SESSION_LOSSES, misplaced: 2 }
    expect(told('a', 'b').check([session(at('b', 'a'))])).toEqual(moved)
    const unasked = { ...NO_SESSION_LOSSES, misplaced: 1 }
    expect(told('a').check([session(at('a'), { unasked: 1 })])).toEqual(unasked)
  })

  it('counts a take that is there twice, and one that is stored and answers nothing', () => {
    expect(told('a').check([session(at('a', 'a'))]).doubled).toBe(1)
    expect(told('a').check([session(at('a'), { takes: ['a', 'x'] })]).doubled).toBe(1)
  })

  it('counts a session that is gone, once', () => {
    const ledger = told('a')
    expect(ledger.check([]).gone).toBe(1)
    expect(ledger.check([]).gone).toBe(0)
  })

  it('counts a session that was handed over and is not in its library', () => {
    const ledger = told('a')
    ledger.hear({ is: 'home', id: 's' })
    expect(ledger.check([session(at('a'))]).progress).toBe(1)
  })

  it('takes either for right while a take or a session is being taken back', () => {
    for (const kept of [at('a'), at('a', 'b')]) {
      const ledger = told('a', 'b')
      ledger.hear({ is: 'undoing', id: 's', recordingId: 'b' })
      expect(ledger.check([session(kept)])).toEqual(NO_SESSION_LOSSES)
    }
    for (const found of [[], [session(at('a', 'b'))]]) {
      const ledger = told('a', 'b')
      ledger.hear({ is: 'withdrawing', id: 's', recordingIds: ['a', 'b'] })
      expect(ledger.check(found)).toEqual(NO_SESSION_LOSSES)
    }
  })

  it('counts a session that was told to be withdrawn and is there again, or is half there', () => {
    const again = told('a')
    again.hear({ is: 'withdrawn', id: 's', recordingIds: ['a'] })
    expect(again.check([session(at('a'))]).gone).toBe(1)
    const half = told('a', 'b')
    half.hear({ is: 'withdrawing', id: 's', recordingIds: ['a', 'b'] })
    expect(half.check([session(at('a'))]).takes).toBe(1)
  })
})
