import { describe, expect, it } from 'vitest'
import type { Take } from '../../../src/shared/model/library'
import { expectationSentence } from '../../../src/shared/present/expectation'
import type { LibraryCounts } from '../../../src/shared/present/library-counts'

/** Counts of two gestures with so many takes each, shared evenly by so many testers. */
function counts(takesEach: number, testers: number): LibraryCounts {
  const codes = Array.from({ length: testers }, (_, i) => `T${i}`)
  const gestures = ['Ring', 'Sweep'].map((name) => ({
    gesture: { id: name, name, note: '' },
    takes: Array.from({ length: takesEach }, () => ({}) as Take),
    testers: codes,
  }))
  return { gestures, takes: 2 * takesEach, testers: codes, backgrounds: [], backgroundMs: 0 }
}

describe('what to expect of few takes', () => {
  it('from one person: most of it is other hands, and counts stand beside the shares', () => {
    const sentence = expectationSentence(counts(3, 1))
    expect(sentence).toContain('3 of each at most, named 79.6')
    expect(sentence).toContain('1420/1785')
    expect(sentence).toContain('Other hands tell more')
  })

  it('goes by the takes of one person, rounded up to what was measured', () => {
    expect(expectationSentence(counts(8, 4))).toContain(
      '3 takes of each by seven people named 98.4',
    )
    expect(expectationSentence(counts(4, 4))).toContain('1 take of each by seven people named 96.1')
  })

  it('is silent where only measuring says more, or nothing can be said', () => {
    expect(expectationSentence(counts(60, 4))).toBeNull()
    expect(expectationSentence(counts(0, 0))).toBeNull()
    const { gestures, ...rest } = counts(3, 1)
    expect(expectationSentence({ ...rest, gestures: gestures.slice(0, 1) })).toBeNull()
  })
})
