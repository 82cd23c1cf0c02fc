import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { estimateDurationMs } from '../../../src/shared/collect/duration'
import { missingTakes } from '../../../src/shared/collect/missing-takes'
import type { Plan, Prompt } from '../../../src/shared/collect/plan'
import { promptsOf } from '../../../src/shared/collect/prompts'
import { newTesterCode, readTesterCode } from '../../../src/shared/collect/tester-code'
import { take } from '../format/sample-library'
import { samplePlan, sampleSession } from './samples'

const takesOf = (prompts: Prompt[]) => prompts.flatMap((one) => (one.kind === 'take' ? [one] : []))

describe('the prompts of a plan', () => {
  test('ask for every take once, whatever order and hand', () => {
    const choices = fc.record({
      order: fc.constantFrom('shuffled' as const, 'blocked' as const),
      hand: fc.constantFrom('own' as const, 'left' as const, 'both' as const),
      restEvery: fc.integer({ min: 0, max: 5 }),
    })
    fc.assert(
      fc.property(choices, fc.integer(), (change, seed) => {
        const takes = takesOf(promptsOf(samplePlan(change), seed))
        const keys = takes.map(({ gestureId, number, hand }) => `${gestureId} ${number} ${hand}`)
        expect(new Set(keys).size).toBe(takes.length)
        expect(takes.length).toBe(change.hand === 'both' ? 16 : 8)
      }),
    )
  })

  test('are the same for the same seed, and others for another', () => {
    const plan = samplePlan()
    expect(promptsOf(plan, 7)).toEqual(promptsOf(plan, 7))
    const orders = new Set(Array.from({ length: 20 }, (_, s) => JSON.stringify(promptsOf(plan, s))))
    expect(orders.size).toBeGreaterThan(5)
  })

  test('shuffled, bring each gesture once before any comes again', () => {
    const ids = takesOf(promptsOf(samplePlan(), 3)).map((one) => one.gestureId)
    for (const round of [0, 2, 4]) expect(new Set(ids.slice(round, round + 2)).size).toBe(2)
  })

  test('blocked, finish one gesture before the next', () => {
    const ids = takesOf(promptsOf(samplePlan({ order: 'blocked' }), 3)).map((one) => one.gestureId)
    expect(ids).toEqual([...Array(5).fill('raise'), ...Array(3).fill('ring')])
  })

  test('with both hands, change the hand once', () => {
    const hands = takesOf(promptsOf(samplePlan({ hand: 'both' }), 3)).map((one) => one.hand)
    expect(hands.filter((hand, i) => i > 0 && hand !== hands[i - 1])).toHaveLength(1)
  })

  test('rest after every fourth take, not before the end, and record background last', () => {
    const kinds = promptsOf(samplePlan(), 3).map((one) => one.kind)
    expect(kinds.flatMap((kind, i) => (kind === 'rest' ? [i] : []))).toEqual([4])
    expect(kinds.at(-1)).toBe('background')
  })
})

test('the estimated duration counts movements, rests, background and what lies around them', () => {
  const plan: Plan = samplePlan({ restEvery: 4, restMs: 20_000, backgroundMs: 60_000 })
  const raiseMs = 3_000
  expect(estimateDurationMs(plan, new Map([['raise', raiseMs]]))).toBe(
    60_000 + 8 * 6_500 + 5 * raiseMs + 3 * 2_000 + 20_000 + 60_000,
  )
})

test('missing takes are counted for each tester and gesture of the plan', () => {
  const facts = (id: string, gestureId: string, sessionId: string, code: string) => ({
    ...take(id, gestureId, code),
    sessionId,
  })
  const one = sampleSession()
  const other = sampleSession({ id: 'c'.repeat(32), planId: 'another', testerCode: 'X' })
  const recordings = [
    facts('1', 'raise', one.id, one.testerCode),
    facts('2', 'raise', one.id, one.testerCode),
    facts('3', 'ring', one.id, one.testerCode),
    facts('4', 'ring', other.id, other.testerCode),
    take('5', 'raise', 'A1'),
  ]
  expect(missingTakes(samplePlan(), [one, other], recordings)).toEqual([
    {
      testerCode: 'K7Q4MXA',
      gestures: [
        { gestureId: 'raise', takes: 2, wanted: 5, missing: 3 },
        { gestureId: 'ring', takes: 1, wanted: 3, missing: 2 },
      ],
      missing: 5,
    },
  ])
})

describe('a tester code', () => {
  const codes = fc.uint8Array({ minLength: 6, maxLength: 6 }).map(newTesterCode)

  test('is read again however it is written down', () => {
    fc.assert(
      fc.property(codes, (code) => {
        const written = ` ${code.slice(0, 3).toLowerCase()}-${code.slice(3).replace(/0/g, 'o')} `
        expect(readTesterCode(written)).toEqual({ ok: true, value: code })
      }),
    )
  })

  test('with one wrong symbol is refused', () => {
    const wrong = fc.tuple(codes, fc.nat(6), fc.constantFrom(...'0123456789ABCDEFGHJKMNPQRSTVWXYZ'))
    fc.assert(
      fc.property(wrong, ([code, at, symbol]) => {
        fc.pre(code[at] !== symbol)
        const read = readTesterCode(code.slice(0, at) + symbol + code.slice(at + 1))
        expect(read.ok ? 'read' : read.code).toBe('tester/code')
      }),
    )
  })
})
