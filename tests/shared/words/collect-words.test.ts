import { describe, expect, it } from 'vitest'
import type { Merge } from '../../../src/shared/collect/merge'
import type { ComparedTake } from '../../../src/shared/collect/takes-compared'
import {
  addressTrouble,
  farText,
  fittedText,
  keptOutText,
  mergeText,
  planText,
  progressText,
  valueText,
} from '../../../src/shared/words/en/collect-words'
import { samplePlan } from '../collect/samples'

const merge = (change: Partial<Merge>): Merge => ({
  merged: { sessions: [], withdrawals: [], recordings: [] },
  added: [],
  knownCount: 0,
  relabelled: [],
  conflicts: [],
  leaving: [],
  keptOut: { withdrawn: 0, dropped: 0 },
  renamed: [],
  ...change,
})

describe('words about a plan', () => {
  it('count gestures and takes, and say when each hand performs them', () => {
    expect(planText(samplePlan())).toBe('2 gestures, 8 takes')
    expect(planText(samplePlan({ hand: 'both' }))).toBe('2 gestures, 8 takes with each hand')
  })

  it('say who came how far', () => {
    expect(progressText([])).toBe('nobody has performed it yet')
    const one = { testerCode: 'A', gestures: [] }
    expect(progressText([{ ...one, missing: 0 }])).toBe('1 tester, nothing missing')
    expect(progressText([0, 3].map((missing) => ({ ...one, missing })))).toBe(
      '2 testers, 3 takes missing',
    )
  })

  it('say what a code left out, and nothing when it holds all', () => {
    const links = [{ plan: samplePlan(), address: '' }]
    expect(fittedText({ links, thinned: [], leftOut: [] })).toBe('')
    expect(fittedText({ links, thinned: ['Raise'], leftOut: ['Pour', 'Ring'] })).toMatch(
      /those of Pour and Ring are left out.*of Raise is coarser.*The copied link holds everything\.$/,
    )
    expect(fittedText({ links: [...links, ...links], thinned: [], leftOut: [] })).toMatch(/2 codes/)
  })

  it('warn of an address that phones cannot open or that gives them no sensor', () => {
    expect(addressTrouble({ protocol: 'https:', hostname: 'team.example.org' })).toBe('')
    expect(addressTrouble({ protocol: 'http:', hostname: 'localhost' })).toMatch(
      /your own computer/,
    )
    expect(addressTrouble({ protocol: 'http:', hostname: '192.168.1.2' })).toMatch(/not secure/)
  })
})

describe('words about what comes home', () => {
  it.each([
    [{ added: ['a'] }, '1 recording is new.'],
    [{ added: ['a', 'b'], knownCount: 1 }, '2 recordings are new; 1 recording here already.'],
    [{ knownCount: 17 }, 'Everything in it is here already: 17 recordings.'],
    [{}, 'There is nothing new in it.'],
  ])('%j: %s', (change, text) => {
    expect(mergeText(merge(change))).toBe(text)
  })

  it.each(['relabelled', 'conflicts', 'leaving'] as const)(
    'never say that nothing is new where something here is %s',
    (what) => {
      for (const knownCount of [0, 17]) {
        const change = { knownCount, [what]: [{ contentId: 'c'.repeat(64) }] }
        expect(mergeText(merge(change as Partial<Merge>))).toBe(
          'No recording is new, but some of those here would change or go.',
        )
      }
    },
  )

  it('say what stays out and why', () => {
    expect(keptOutText(merge({}))).toBe('')
    expect(keptOutText(merge({ keptOut: { withdrawn: 17, dropped: 1 } }))).toBe(
      'Stays out: 17 recordings of testers who withdrew, and 1 take dropped here before.',
    )
  })

  it('name the value of a label as people say it', () => {
    const facts = { id: '', at: '', over: [] }
    const gestures = [{ id: 'g1', name: 'Raise', note: '' }]
    expect(valueText({ ...facts, field: 'gestureId', value: 'g1' }, gestures)).toBe('Raise')
    expect(valueText({ ...facts, field: 'hand', value: 'unknown' }, gestures)).toBe('not noted')
    expect(valueText({ ...facts, field: 'trim', value: null }, gestures)).toBe('whole take')
    expect(valueText({ ...facts, field: 'note', value: '' }, gestures)).toBe('nothing')
  })

  it('say how far a take lies, and what it is nearer to', () => {
    const take = { ratio: 4.44, nearer: null } as ComparedTake
    const gestures = [{ id: 'g1', name: 'Ring', note: '' }]
    expect(farText(take, gestures)).toBe('4.4 times the usual distance.')
    expect(farText({ ...take, nearer: 'g1' }, gestures)).toMatch(/, and nearer to Ring\.$/)
  })
})
