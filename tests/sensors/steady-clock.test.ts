import { expect, it } from 'vitest'
import { SteadyClock } from '../../src/sensors/steady-clock'

/** Times that come out, for readings 20 ms apart whose clock is `shiftMs` off from the 5th on. */
function timesAcross(shiftMs: number): number[] {
  const clock = new SteadyClock()
  return Array.from({ length: 10 }, (_, n) => {
    const nowMs = 1000 + 20 * n
    return clock.timeOf(nowMs + (n >= 5 ? shiftMs : 0), nowMs + 3)
  })
}

it('passes a sound clock through untouched', () => {
  expect(timesAcross(0)).toEqual(Array.from({ length: 10 }, (_, n) => 1000 + 20 * n))
})

it.each([-3_600_000, 3_600_000, -5000, 86_400_000])('takes a jump of %i ms out', (shiftMs) => {
  expect(timesAcross(shiftMs)).toEqual(timesAcross(0))
})

it('leaves a pause of the page as it is: it is real time', () => {
  const clock = new SteadyClock()
  clock.timeOf(1000, 1000)
  expect(clock.timeOf(9000, 9002)).toBe(9000)
})

it('leaves readings that come late alone', () => {
  const clock = new SteadyClock()
  clock.timeOf(1000, 1000)
  expect(clock.timeOf(1017, 2500)).toBe(1017)
  expect(clock.timeOf(2500, 2502)).toBe(2500)
})
