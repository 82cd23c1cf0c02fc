import { describe, expect, test } from 'vitest'
import type { CoreEvent, TeachAnswer } from '../../../src/shared/core/core'
import { mcnemarExact } from '../../../src/shared/statistics/mcnemar'
import { pairedLoss } from '../../../src/shared/statistics/paired'
import { wilson } from '../../../src/shared/statistics/wilson'
import type { TeachCost } from '../../../src/shared/teach/teach-cost'
import {
  knownAsWords,
  teachBackgroundWords,
  teachCostWords,
  teachPlaceWords,
  teachWords,
} from '../../../src/shared/words/en/teach-words'
import { event, smallModel } from '../present/present.fixture'

const model = smallModel()

const answer = (change: Partial<TeachAnswer>, own: Partial<CoreEvent> = {}): TeachAnswer => ({
  status: 'more',
  event: event(own),
  count: 3,
  nearest: 1,
  nearestDistance: 12_345,
  spread: 800,
  threshold: 1600,
  ...change,
})

const words = (change: Partial<TeachAnswer>) => teachWords(answer(change), model, 3, 'Bow')

describe('a session in words', () => {
  test('tells how far it is, and each refusal with its figures and what to do', () => {
    expect(words({ count: 2 }).seen).toBe('2 of 3 taken.')
    expect(words({ status: 'done' }).seen).toBe(
      'Bow is taught: its movements lie within 800 of each other, the nearest other gesture is Swing at 12\u202f345. It answers up to 1600.',
    )
    expect(words({ status: 'done', nearest: null }).seen).not.toContain('nearest')
    expect(words({ status: 'unlike' }).seen).toContain('lie up to 800 apart')
    expect(words({ status: 'near' }).todo).toContain('teach it in place of Swing')
    expect(words({ status: 'cut' }).seen).toContain('was not taken')
  })

  test('says when the model knew these movements already by another name', () => {
    const step = (own: Partial<CoreEvent>) => ({ answer: answer({}, own), counts: 1 })
    const rejected = step({ kind: 'reject', reason: 'far', gesture: 1 })
    const ring = step({ gesture: 0 })
    expect(knownAsWords([ring, ring, rejected], model, null)).toContain(
      'Until now the model answered 2 of these 3 with Ring.',
    )
    expect(knownAsWords([ring, ring, rejected], model, 'ring')).toBe('')
    expect(knownAsWords([ring, rejected, rejected], model, null)).toBe('')
  })
})

function costOf(lost: number, won: number, change: Partial<TeachCost> = {}): TeachCost {
  const n = 200
  return {
    holdout: 'tester',
    rounds: 6,
    accepted: 6,
    before: wilson(180, n),
    after: wilson(180 - lost + won, n),
    loss: pairedLoss(lost, won, n),
    p: mcnemarExact(lost, won),
    testers: { better: 0, worse: lost > 0 ? 1 : 0, equal: lost > 0 ? 5 : 6 },
    losers: lost > 0 ? [{ name: 'Ring', n: 40, before: 38, after: 38 - lost }] : [],
    lost: [],
    place: null,
    background: null,
    ...change,
  }
}

describe('what it costs in words', () => {
  test('no loss is bounded, and nothing speaks against it', () => {
    const { seen, means, todo } = teachCostWords(costOf(0, 0))
    expect(seen).toContain('Of 200 held-out takes of the other gestures 180 were right')
    expect(means).toMatch(/no more than chance explains, at most 1\.9 points at 95/)
    expect(todo).toBe('Nothing speaks against it.')
  })

  test('an interval says that it is over takes, and how many testers it touches', () => {
    const { means } = teachCostWords(costOf(12, 0))
    expect(means).toMatch(/95.% confidence over takes; testers may differ more\. Of 6 testers/)
    expect(means).toContain('Of 6 testers 0 got better, 1 worse, 5 equal.')
    const two = teachCostWords(costOf(0, 0, { testers: { better: 0, worse: 0, equal: 2 } })).means
    expect(two).toContain('testers may differ more')
    expect(two).not.toContain('Of 2 testers')
    const known = teachCostWords(costOf(0, 0, { holdout: 'take' })).means
    expect(known).toContain('over takes of testers the model knows.')
    expect(known).not.toContain('got better')
  })

  test('a loss beyond chance names the gesture that loses most', () => {
    const { means, todo } = teachCostWords(costOf(12, 0))
    expect(means).toContain('more than chance explains')
    expect(todo).toBe('Choose a movement less like Ring, which loses 12 of 40.')
  })

  test('rounds that refused it are told, and when all did there is no cost to speak of', () => {
    expect(teachCostWords(costOf(0, 0, { accepted: 5 })).means).toContain(
      'In 1 of 6 rounds it was refused, and their takes are not counted.',
    )
    expect(teachCostWords(costOf(0, 0, { accepted: 0 })).seen).toContain(
      'None of 6 rounds with testers held out',
    )
  })

  test('activations in the background have their time and interval, places their takes', () => {
    const background = { activations: 2, hours: 0.5, perHour: 4, low: 0.48, high: 14.4 }
    const cost = costOf(0, 0, { background })
    expect(teachBackgroundWords(cost)).toContain('Of 30 min of background it answered 2 movements')
    expect(teachCostWords(cost).todo).toContain('everyday movements')
    const place = { name: 'Ring', before: wilson(40, 40), after: wilson(10, 40) }
    const unknown = teachPlaceWords(costOf(0, 0, { place }))
    expect(unknown).toMatch(/^Takes of Ring by testers the model does not know: 100.% \(40\/40, 95/)
    // Wilson of 10 of 40 by hand: (0.25 + z²/80 ± z √(0.1875/40 + z²/6400)) / (1 + z²/40).
    expect(unknown).toMatch(
      /25\.0.% \(10\/40, 95.% interval 14\.2 to 40\.2.%\) with the taught one/,
    )
    expect(unknown).toContain('the intervals are over takes; testers may differ more.')
    const known = teachPlaceWords(costOf(0, 0, { place, holdout: 'take' }))
    expect(known).toMatch(/^Held-out takes of Ring by testers the model knows: /)
    expect(known).not.toContain('does not know')
    const none = { name: 'Ring', before: wilson(0, 0), after: wilson(0, 0) }
    expect(teachPlaceWords(costOf(0, 0, { place: none, accepted: 0 }))).toBe('')
    expect(teachPlaceWords(costOf(0, 0))).toBe('')
  })
})
