import { describe, expect, test } from 'vitest'
import { actOn, PlayHead } from '../../../src/ui/replay/play-head'

const span = { from: 100, to: 200 }
const press = (head: PlayHead, key: string, shift = false) => actOn(head, key, shift)?.()

describe('the play head', () => {
  test('goes on by the time that passed, slower at slower speeds', () => {
    for (const pace of [1, 1 / 2, 1 / 4, 1 / 8] as const) {
      const head = new PlayHead(50, span)
      head.pace.value = pace
      head.playing.value = true
      for (let i = 0; i < 10; i++) head.advance(80)
      // 0.8 s at 50 Hz are 40 samples.
      expect(head.at.value).toBeCloseTo(100 + 40 * pace, 9)
    }
  })

  test('stops at the last sample, or begins anew when it loops', () => {
    const head = new PlayHead(50, span)
    head.playing.value = true
    head.moveTo(198.5)
    head.advance(90)
    expect([head.sample, head.playing.value]).toEqual([199, false])
    head.loop.value = true
    head.toggle()
    expect(head.sample).toBe(100)
    head.moveTo(199)
    head.advance(90)
    expect([head.sample, head.playing.value]).toEqual([100, true])
  })

  test('does not jump after a page was hidden', () => {
    const head = new PlayHead(50, span)
    head.advance(30_000)
    expect(head.sample).toBe(105)
  })

  test('stays within what is shown', () => {
    const head = new PlayHead(50, span)
    head.moveTo(-5)
    expect(head.sample).toBe(100)
    head.show({ from: 0, to: 20 }, 500)
    expect(head.sample).toBe(19)
  })
})

describe('keys', () => {
  test('arrows go by a sample, with shift by ten, and stop what plays', () => {
    const head = new PlayHead(50, span)
    head.playing.value = true
    press(head, 'ArrowRight')
    press(head, 'ArrowRight', true)
    press(head, 'ArrowLeft')
    expect([head.sample, head.playing.value]).toEqual([110, false])
    press(head, 'End')
    expect(head.sample).toBe(199)
    press(head, 'Home')
    expect(head.sample).toBe(100)
  })

  test('space plays, L loops, down slows and up quickens, within the four speeds', () => {
    const head = new PlayHead(50, span)
    press(head, ' ')
    press(head, 'L')
    expect([head.playing.value, head.loop.value]).toEqual([true, true])
    for (let i = 0; i < 6; i++) press(head, 'ArrowDown')
    expect(head.pace.value).toBe(1 / 8)
    for (let i = 0; i < 6; i++) press(head, 'ArrowUp')
    expect(head.pace.value).toBe(1)
  })

  test('others mean nothing', () => {
    expect(actOn(new PlayHead(50, span), 'q', false)).toBeNull()
    expect(actOn(new PlayHead(50, span), 'Tab', false)).toBeNull()
  })
})
