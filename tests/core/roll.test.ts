import { beforeEach, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { encodeModel } from '../../src/shared/format/model-bytes'
import { createRandom } from '../../src/shared/statistics/random'
import { concat, exampleModel, movement, ONE_G, rest } from './example-model'

let core: WasmCore
beforeEach(async () => {
  core = await loadCoreForNode()
})

const CROSS = [
  [1, 2],
  [2, 0],
  [0, 1],
] as const

/** Turns every sample about an axis, in double precision: what another grip would have read. */
function turned(samples: Int16Array, longAxis: 0 | 1 | 2, degrees: number): Int16Array {
  const [u, v] = CROSS[longAxis]
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  const out = samples.slice()
  for (let at = 0; at < out.length; at += 3) {
    const [a, b] = [samples[at + u]!, samples[at + v]!]
    out[at + u] = Math.round(cos * a - sin * b)
    out[at + v] = Math.round(sin * a + cos * b)
  }
  return out
}

function gravityOf(longAxis: 0 | 1 | 2, aboveHorizonDeg: number): [number, number, number] {
  const down: [number, number, number] = [0, 0, 0]
  down[longAxis] = Math.round(ONE_G * Math.sin((aboveHorizonDeg * Math.PI) / 180))
  down[CROSS[longAxis][0]] = Math.round(ONE_G * Math.cos((aboveHorizonDeg * Math.PI) / 180))
  return down
}

describe('roll alignment', () => {
  for (const longAxis of [0, 1, 2] as const)
    it(`makes a movement look the same in every grip about axis ${longAxis}`, () => {
      const random = createRandom(longAxis)
      const down = gravityOf(longAxis, 30)
      const upright = concat(
        rest(30, down, random),
        movement(30, down, 6000, random),
        rest(20, down, random),
      )
      core.load(encodeModel(exampleModel({ longAxis })))
      expect(core.push(upright).map((event) => event.roll)).toEqual(['aligned'])
      const expected = core.query()
      for (const degrees of [-170, -90, -35, 1, 60, 145, 180]) {
        core.reset()
        const [event] = core.push(turned(upright, longAxis, degrees))
        expect(event?.roll).toBe('aligned')
        const query = core.query()
        // Gravity is known to the noise of the rest (4 counts in 4096); the rest is rounding.
        const worst = Math.max(...query.map((value, i) => Math.abs(value - expected[i]!)))
        expect(worst).toBeLessThanOrEqual(1)
      }
    })

  it('leaves the samples alone when the model does not ask for it', () => {
    const random = createRandom(5)
    const down = gravityOf(1, 0)
    const upright = concat(
      rest(30, down, random),
      movement(30, down, 6000, random),
      rest(20, down, random),
    )
    core.load(encodeModel(exampleModel({ rollAlign: false })))
    const [event] = core.push(upright)
    const query = core.query()
    core.reset()
    core.push(turned(upright, 1, 90))
    expect(event?.roll).toBe('off')
    expect(core.query()).not.toEqual(query)
  })

  // Gravity is the same in every grip when the long axis is vertical; 26 % across is 15.07 degrees.
  it('says that roll cannot be known with the long axis within 15 degrees of the vertical', () => {
    const rollAt = (degreesFromVertical: number) => {
      const random = createRandom(6)
      const down = gravityOf(1, 90 - degreesFromVertical)
      core.load(encodeModel(exampleModel()))
      const [event] = core.push(
        concat(rest(30, down, random), movement(30, down, 6000, random), rest(20, down, random)),
      )
      return event?.roll
    }
    expect([0, 5, 14, 16, 30, 90].map(rollAt)).toEqual([
      'vertical',
      'vertical',
      'vertical',
      'aligned',
      'aligned',
      'aligned',
    ])
  })

  it('does not use an old rest: after movements without rest between, gravity is unknown', () => {
    const random = createRandom(8)
    const down = gravityOf(1, 0)
    core.load(encodeModel(exampleModel({ segmenter: { offHold: 1, refractory: 0 } })))
    const events = core.push(
      concat(
        movement(30, down, 6000, random),
        rest(5, down, random),
        movement(30, down, 6000, random),
        rest(30, down, random),
        movement(30, down, 6000, random),
        rest(9, down, random),
      ),
    )
    expect(events.map((event) => event.roll)).toEqual(['no-rest', 'no-rest', 'aligned'])
  })
})
