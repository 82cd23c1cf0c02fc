import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  advanceTurn,
  firstTurn,
  secondsLeft,
  type Turn,
  type TurnEvent,
} from '../../../src/shared/stage/turn'

const GESTURES = ['raise', 'ring', 'pour']

function follow(events: TurnEvent[], from: Turn = firstTurn(GESTURES, 0)!): Turn {
  return events.reduce((turn, event) => advanceTurn(turn, event, GESTURES), from)
}

const READY: TurnEvent[] = [
  { kind: 'ready', atMs: 0 },
  { kind: 'tick', atMs: 3000 },
]

describe("a visitor's turn", () => {
  it('counts down from three before it is the visitor who moves', () => {
    const counting = follow([{ kind: 'ready', atMs: 0 }])
    expect([0, 999, 1000, 2500, 2999].map((ms) => secondsLeft(counting, ms))).toEqual([
      3, 3, 2, 1, 1,
    ])
    expect(follow([{ kind: 'tick', atMs: 2999 }], counting)).toBe(counting)
    expect(follow([{ kind: 'tick', atMs: 3000 }], counting).step).toBe('now')
  })

  it('tells what came: the movement asked for, another one, or none', () => {
    const now = follow(READY)
    const told = (gestureId: string | null) =>
      follow([{ kind: 'answered', gestureId, atMs: 3500 }], now)
    expect(told('raise')).toMatchObject({ step: 'told', outcome: 'right', answered: 'raise' })
    expect(told('ring')).toMatchObject({ step: 'told', outcome: 'other', answered: 'ring' })
    expect(told(null)).toMatchObject({ step: 'told', outcome: 'none', answered: null })
  })

  it('does not take the phone going from hand to hand for an answer', () => {
    const card = firstTurn(GESTURES, 0)!
    expect(follow([{ kind: 'answered', gestureId: 'ring', atMs: 10 }], card)).toBe(card)
    expect(follow([{ kind: 'answered', gestureId: null, atMs: 10 }], card)).toBe(card)
    const early = follow([{ kind: 'answered', gestureId: 'raise', atMs: 10 }], card)
    expect(early).toMatchObject({ outcome: 'right' })
  })

  it('asks for the next movement after the right one, and for the same again after a miss', () => {
    const thenCard = (gestureId: string | null) =>
      follow([...READY, { kind: 'answered', gestureId, atMs: 3500 }, { kind: 'tick', atMs: 7000 }])
    expect(thenCard('raise')).toEqual({ step: 'card', asked: 'ring', misses: 0, sinceMs: 7000 })
    expect(thenCard('ring')).toEqual({ step: 'card', asked: 'raise', misses: 1, sinceMs: 7000 })
  })

  it('lets nobody be stuck: the second miss brings the next card, and nobody moving is a miss', () => {
    const late = follow([...READY, { kind: 'tick', atMs: 11_000 }])
    expect(late).toMatchObject({ step: 'told', outcome: 'late', misses: 1 })
    const again = follow(
      [
        { kind: 'tick', atMs: 14_500 },
        { kind: 'ready', atMs: 15_000 },
        { kind: 'tick', atMs: 18_000 },
        { kind: 'answered', gestureId: null, atMs: 19_000 },
        { kind: 'tick', atMs: 22_500 },
      ],
      late,
    )
    expect(again).toMatchObject({ step: 'card', asked: 'ring', misses: 0 })
  })

  it('goes round all cards and begins again', () => {
    const next = (atMs: number): TurnEvent => ({ kind: 'next', atMs })
    expect(follow([next(1), next(2), next(3)]).asked).toBe('raise')
    expect(firstTurn([], 0)).toBeNull()
  })

  it('always asks for a gesture of the library, whatever comes in whatever order', () => {
    const gestureId = fc.option(fc.constantFrom('raise', 'ring', 'pour', 'gone'))
    const event = fc.oneof(
      fc.constantFrom<TurnEvent['kind']>('ready', 'next', 'tick').map((kind) => ({ kind })),
      gestureId.map((id) => ({ kind: 'answered' as const, gestureId: id })),
    )
    fc.assert(
      fc.property(fc.array(fc.tuple(event, fc.nat(5000))), (steps) => {
        let atMs = 0
        const turn = follow(
          steps.map(([one, passedMs]) => {
            atMs += passedMs
            return { ...one, atMs } as TurnEvent
          }),
        )
        expect(GESTURES).toContain(turn.asked)
        expect(turn.sinceMs).toBeLessThanOrEqual(atMs)
      }),
    )
  })
})
