import { describe, expect, it } from 'vitest'
import {
  advanceShow,
  asksForStart,
  OFF,
  type Show,
  type ShowEvent,
} from '../../../src/shared/stage/show'
import { showLine } from '../../../src/shared/words/en/stage-words'

/** Follows events; counts the starts asked for. */
function follow(events: ShowEvent[], from: Show = OFF): { show: Show; starts: number } {
  let starts = 0
  let show = from
  for (const event of events) {
    const next = advanceShow(show, event)
    if (asksForStart(show, next)) starts += 1
    show = next
  }
  return { show, starts }
}

const ON: ShowEvent[] = [{ kind: 'begin' }, { kind: 'started', atMs: 100 }]

describe('a show', () => {
  it('asks for one start and is on when that went well', () => {
    const { show, starts } = follow(ON)
    expect(show).toEqual({ phase: 'on', outageMs: null, sinceMs: 100 })
    expect(starts).toBe(1)
  })

  it('is off with the reason when its first start is refused, as without permission', () => {
    const { show } = follow([{ kind: 'begin' }, { kind: 'refused', sentence: 'No.', atMs: 1 }])
    expect(show).toEqual({ phase: 'off', why: 'No.' })
    expect(follow([{ kind: 'begin' }], show).show.phase).toBe('starting')
  })

  it('tries again after a loss, waits longer each time, and never gives up', () => {
    let { show } = follow([...ON, { kind: 'lost', gone: 'recogniser', atMs: 1000 }])
    const triesAtMs: number[] = []
    for (let atMs = 1000; atMs < 61_000; atMs += 100) {
      const next = advanceShow(show, { kind: 'tick', atMs })
      if (asksForStart(show, next)) {
        triesAtMs.push(atMs - 1000)
        show = advanceShow(next, { kind: 'refused', sentence: 'Still gone.', atMs })
      } else show = next
    }
    expect(triesAtMs.slice(0, 6)).toEqual([200, 1200, 3200, 7200, 12_200, 17_200])
    expect(show.phase).toBe('mending')
  })

  it('tries at once when the sensor sends again, and not twice while a try is under way', () => {
    const lost = follow([...ON, { kind: 'lost', gone: 'sensor', atMs: 1000 }]).show
    const waited = follow(
      [
        { kind: 'tick', atMs: 1200 },
        { kind: 'refused', sentence: '', atMs: 2200 },
        { kind: 'readings', atMs: 2300 },
        { kind: 'tick', atMs: 2300 },
        { kind: 'readings', atMs: 2310 },
        { kind: 'tick', atMs: 2400 },
      ],
      lost,
    )
    expect(waited.starts).toBe(2)
    expect(follow([{ kind: 'started', atMs: 2500 }], waited.show).show).toEqual({
      phase: 'on',
      outageMs: 1500,
      sinceMs: 2500,
    })
  })

  it('leaves whenever it is told to, and late answers do not bring it back', () => {
    for (const events of [ON, [...ON, { kind: 'lost', gone: 'sensor', atMs: 5 } as const]]) {
      const { show } = follow([
        ...events,
        { kind: 'leave' },
        { kind: 'started', atMs: 9 },
        { kind: 'lost', gone: 'recogniser', atMs: 9 },
        { kind: 'tick', atMs: 9000 },
      ])
      expect(show).toEqual(OFF)
    }
  })

  it('is the very same object when nothing changed, so that nothing is drawn', () => {
    const { show } = follow(ON)
    expect(advanceShow(show, { kind: 'tick', atMs: 200 })).toBe(show)
    expect(advanceShow(OFF, { kind: 'leave' })).toBe(OFF)
  })
})

describe('the line of a show', () => {
  it('says nothing while all is well, what is gone, and for a moment that it is back', () => {
    const on = follow(ON).show
    expect(showLine(on)).toBe('')
    const lost = advanceShow(on, { kind: 'lost', gone: 'recogniser', atMs: 1000 })
    expect(showLine(lost)).toBe('The recogniser stopped. Starting it again.')
    const again = follow(
      [
        { kind: 'tick', atMs: 1200 },
        { kind: 'refused', sentence: '', atMs: 1300 },
      ],
      lost,
    ).show
    expect(showLine(again)).toMatch(/Try 2\.$/)
    const back = follow(
      [
        { kind: 'tick', atMs: 9000 },
        { kind: 'started', atMs: 9000 },
      ],
      again,
    ).show
    expect(showLine(back)).toMatch(/^Back after 8\ss\.$/)
    expect(showLine(advanceShow(back, { kind: 'tick', atMs: 13_000 }))).toBe('')
  })
})
