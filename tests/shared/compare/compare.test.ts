import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { changesBetween } from '../../../src/shared/compare/changes'
import { compareEvaluations } from '../../../src/shared/compare/compare-evaluations'
import { type KeptModel, MOST_KEPT, prunable } from '../../../src/shared/compare/kept-model'
import type { Evaluation } from '../../../src/shared/model/evaluation'
import { DEFAULT_TRAINING } from '../../../src/shared/model/library'
import {
  compareWords,
  flipText,
  gestureWords,
  notComparedWords,
} from '../../../src/shared/words/en/compare-words'
import { evaluation } from '../present/present.fixture'

/** Takes one to n of Ring, the ones named answered Swing; of Swing all right. */
function measured(ringTakes: number, wrong: number[]): Evaluation {
  const own = evaluation([
    [0, 0, ringTakes],
    [1, 1, 10],
  ])
  for (const [i, outcome] of own.outcomes.entries()) {
    outcome.takeId = `take ${i < ringTakes ? i + 1 : `swing ${i - ringTakes}`}`
    if (i < ringTakes && wrong.includes(i + 1)) outcome.answer = 1
  }
  return own
}

const plain = (own: Evaluation) => ({ evaluation: own, takeIds: null })

function compared(a: Evaluation, b: Evaluation) {
  const result = compareEvaluations(plain(a), plain(b))
  if (!result.ok) throw new Error(result.message)
  return result.value
}

describe('two evaluations on the same takes', () => {
  test('are counted pair by pair, flips named, p as the binomial distribution has it', () => {
    const found = compared(measured(20, [1, 2, 3, 4, 5, 6, 7, 8, 9]), measured(20, [1, 20]))
    expect(found).toMatchObject({ bothRight: 20, bothWrong: 1, onlyFirst: 1, onlySecond: 8 })
    expect(found.first).toMatchObject({ hits: 21, n: 30 })
    expect(found.second).toMatchObject({ hits: 28, n: 30 })
    // Two-sided exact: twice the tail of 9 tosses of a coin.
    expect(found.p).toBeCloseTo(2 * jstat.binomial.cdf(1, 9, 0.5), 10)
    expect(found.flips).toHaveLength(9)
    expect(found.flips[0]).toMatchObject({ takeId: 'take 20', better: false, second: 'Swing' })
    expect(flipText(found.flips[0]!)).toBe('Ring: right before, Swing now')
    expect(flipText(found.flips[1]!)).toBe('Ring: Swing before, right now')
    const { means, evidence, todo } = compareWords(found, ['24 takes more by T07'])
    expect(evidence).toContain('Of 30 takes held out in both, A had 21 right and B 28')
    expect(evidence).toContain('8 put right, 1 newly wrong')
    expect(evidence).toContain('difference 23.3 points')
    expect(means).toBe('B is better than A by more than chance explains.')
    expect(todo).toBe('Keep B. Look first at Ring, of which 1 take is now answered Swing.')
  })

  test('say that their interval is over takes, and how many testers got better or worse', () => {
    const [a, b] = [measured(20, [1, 2, 3, 4]), measured(20, [4, 5])]
    // Takes 1 to 3 are put right, all by one tester; take 5, of another, is newly wrong.
    const byTester = ({ outcomes }: Evaluation) => {
      for (const outcome of outcomes) {
        const number = Number(/^take (\d+)$/.exec(outcome.takeId)?.[1] ?? 20)
        outcome.testerCode = number <= 4 ? 'T01' : number === 5 ? 'T02' : 'T03'
      }
    }
    for (const one of [a, b]) byTester(one)
    const found = compared(a, b)
    expect(found.testers).toEqual({ better: 1, worse: 1, equal: 1 })
    const said =
      ', over takes; testers may differ more. Of 3 testers 1 got better, 1 worse, 1 equal.'
    expect(compareWords(found, []).evidence.endsWith(said)).toBe(true)
    for (const one of [a, b]) one.holdout = 'take'
    const { evidence } = compareWords(compared(a, b), [])
    expect(evidence.endsWith(', over takes of testers the model knows.')).toBe(true)
    const one = compareWords(compared(measured(20, [1]), measured(20, [])), []).evidence
    expect(one.endsWith('testers may differ more.')).toBe(true)
  })

  test('that are worse say where to go back to', () => {
    const { means, todo } = compareWords(
      compared(measured(20, []), measured(20, [1, 2, 3, 4, 5, 6])),
      [],
    )
    expect(means).toContain('A is better than B')
    expect(todo).toContain('Go back to A')
  })

  test('that differ in few takes say that chance explains it, and how many takes would tell', () => {
    const few = compareWords(compared(measured(20, [1, 2, 3]), measured(20, [4])), [])
    expect(few.means).toContain('Chance alone')
    expect(few.todo).toMatch(/^Do not choose by this. If it goes on like this, about \d+ takes/)
    const same = compareWords(compared(measured(20, [1]), measured(20, [1])), [])
    expect(same.changed).toBe('Nothing is different between A and B that training reads.')
    expect(same.evidence).toContain('not one answer went from right to wrong')
    expect(same.means).toBe('A and B are right about the same takes.')
  })

  test('are compared on takes held out in both alone, and say what became of the others', () => {
    const [a, b] = [measured(20, []), measured(24, [1])]
    a.outcomes = a.outcomes.filter(({ takeId }) => takeId !== 'take 3')
    b.outcomes.find(({ takeId }) => takeId === 'take 2')!.truth = 2
    b.outcomes = b.outcomes.filter(({ takeId }) => takeId !== 'take 7')
    const takeIds = new Set([...a.outcomes.map(({ takeId }) => takeId), 'take 3'])
    const result = compareEvaluations({ evaluation: a, takeIds }, plain(b))
    if (!result.ok) throw new Error(result.message)
    expect(result.value.first.n).toBe(27)
    expect(result.value.notCompared).toEqual({
      onlyInFirst: 1,
      onlyInSecond: 4,
      trainedOn: 1,
      relabelled: 1,
    })
    expect(notComparedWords(result.value)).toBe(
      'Not compared: 1 take only A had, 4 takes only B had, 1 take that one of them trained on and never held out, 1 take relabelled between them.',
    )
  })

  test('with other gestures to choose from say so', () => {
    const [a, b] = [measured(5, []), measured(5, [])]
    a.gestures = a.gestures.slice(0, 2)
    expect(gestureWords(compared(a, b))).toContain('B alone knew Pour')
  })

  test('held out differently, or without a common take, are not compared', () => {
    const other: Evaluation = { ...measured(5, []), holdout: 'take' }
    expect(compareEvaluations(plain(measured(5, [])), plain(other))).toMatchObject({
      code: 'compare/holdout',
    })
    const elsewhere = measured(5, [])
    for (const outcome of elsewhere.outcomes) outcome.takeId += ' of another library'
    expect(compareEvaluations(plain(measured(5, [])), plain(elsewhere))).toMatchObject({
      code: 'compare/no-takes',
    })
  })
})

function kept(change: Partial<KeptModel>): KeptModel {
  return {
    hash: '00',
    bytes: new Uint8Array(),
    core: 'core',
    libraryHash: '',
    training: DEFAULT_TRAINING,
    target: { name: 'hand lantern', rateHz: 52, accelFullScale: 8, gyroFullScale: 1000 },
    gestures: [{ id: 'ring', name: 'Ring' }],
    takes: [{ id: 'a', gestureId: 'ring', testerCode: 'T01' }],
    backgrounds: 1,
    matcher: 'template',
    tableBytes: 4000,
    ramBytes: 2000,
    pinned: false,
    evaluations: {},
    ...change,
  }
}

test('what changed between two models is said in clauses', () => {
  const takes = ['T02', 'T03'].map((testerCode, i) => ({
    id: `n${i}`,
    gestureId: 'ring',
    testerCode,
  }))
  const after = kept({
    takes: [...kept({}).takes, ...takes],
    training: { ...DEFAULT_TRAINING, length: 32, rollAlign: false },
    gestures: [...kept({}).gestures, { id: 'bow', name: 'Bow' }],
    core: 'newer',
  })
  expect(changesBetween(kept({}), after)).toEqual([
    '2 takes more by T02, T03',
    'with Bow',
    'points 24 → 32',
    'roll aligned yes → no',
    'another version of the recogniser or of its training',
  ])
  expect(changesBetween(kept({}), kept({}))).toEqual([])
})

test('the oldest models beyond the last twenty go, pinned ones stay', () => {
  const models = Array.from({ length: MOST_KEPT + 4 }, (_, i) => ({
    keptAt: new Date(Date.UTC(2026, 0, 1 + ((i * 7) % 24))).toISOString(),
    model: { pinned: i === 0 },
  }))
  const gone = prunable(models)
  expect(gone).toHaveLength(3)
  expect(gone.map(({ keptAt }) => keptAt.slice(8, 10))).toEqual(['02', '03', '04'])
})
