import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fail, ok, type Result } from '../../../src/shared/model/result'
import { dispatch, type Hand } from '../../../src/shared/parts/dispatch'

const LOST = fail('hand/lost', 'gone')

/** A hand that takes some turns of the event loop for each part. */
function hand(answer: (part: number) => Result<unknown>, turns: (part: number) => number): Hand {
  return {
    run: async (part, onProgress) => {
      for (let turn = 0; turn < turns(part); turn++) {
        onProgress({ done: turn, total: turns(part), what: `part ${part}` })
        await Promise.resolve()
      }
      return answer(part)
    },
  }
}

describe('parts given to several hands', () => {
  it('come back in their order, however many hands there are and however long each takes', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.nat(9), { maxLength: 30 }),
        fc.integer({ min: 1, max: 5 }),
        async (turns, count) => {
          const hands = Array.from({ length: count }, () =>
            hand(
              (part) => ok(part * part),
              (part) => turns[part]!,
            ),
          )
          const answer = await dispatch(turns.length, hands)
          expect(answer).toEqual(ok(turns.map((_, part) => part * part)))
        },
      ),
    )
  })

  it('answer with the first failure in their order, and nothing is begun after a failure', async () => {
    const begun: number[] = []
    const slowFirst = (part: number) => (part === 1 ? 20 : 1)
    const hands = [0, 1, 2].map(() =>
      hand((part) => {
        begun.push(part)
        return part === 1 || part === 2 ? fail(`part/${part}`, 'no') : ok(part)
      }, slowFirst),
    )
    expect(await dispatch(50, hands)).toMatchObject({ ok: false, code: 'part/1' })
    expect(begun.length).toBeLessThan(10)
  })

  it('are done again by another hand when one is lost, and give up on a part that loses three', async () => {
    const lostOnce = new Set<number>()
    const flaky = (part: number) => {
      if (part % 4 !== 0 || lostOnce.has(part)) return ok(part)
      lostOnce.add(part)
      return LOST
    }
    const options = { isOfHand: ({ code }: { code: string }) => code === LOST.code }
    const two = [0, 1].map(() => hand(flaky, () => 2))
    expect(await dispatch(12, two, options)).toEqual(ok([...Array(12).keys()]))
    expect(lostOnce).toEqual(new Set([0, 4, 8]))

    let tries = 0
    const deadly = hand(
      (part) => {
        if (part === 3) tries++
        return part === 3 ? LOST : ok(part)
      },
      () => 1,
    )
    expect(await dispatch(6, [deadly], options)).toMatchObject({ code: LOST.code })
    expect(tries).toBe(3)
  })

  it('tell one progress that sums up, never goes back and ends at all', async () => {
    const told: number[] = []
    const hands = [0, 1, 2].map(() =>
      hand(
        (part) => ok(part),
        (part) => 1 + (part % 5),
      ),
    )
    await dispatch(20, hands, { onProgress: ({ done }) => told.push(done) })
    expect(told).toEqual([...told].sort((a, b) => a - b))
    expect(told.at(-1)).toBe(20)
  })
})
