import { describe, expect, it } from 'vitest'
import { toBlock } from '../../src/recording/block'
import { SampleRing } from '../../src/recording/sample-ring'
import { samplesOf } from '../sensors/samples'

describe('the ring of samples', () => {
  it('remembers at least its span and at most twice of it', () => {
    const ring = new SampleRing(1000)
    for (const sample of samplesOf(600, (i) => [i, 0, 0, 0, 0, 0])) {
      ring.push(sample)
      const all = ring.since(Number.NEGATIVE_INFINITY)
      const spanMs = all.at(-1)!.tMs - all[0]!.tMs
      expect(spanMs).toBeLessThanOrEqual(2000)
      if (sample.tMs > 1000) expect(spanMs).toBeGreaterThanOrEqual(980)
    }
  })

  it('gives the samples at or after a time, and none after the newest', () => {
    const ring = new SampleRing(1000)
    for (const sample of samplesOf(30, (i) => [i, 0, 0, 0, 0, 0])) ring.push(sample)
    expect(ring.since(400).map(({ ax }) => ax)).toEqual([24, 25, 26, 27, 28, 29])
    expect(ring.since(ring.newestMs() + 1)).toEqual([])
  })

  it('says 0 while it is empty', () => {
    expect(new SampleRing(1000).newestMs()).toBe(0)
  })
})

describe('a block of samples', () => {
  it('has rows in axis order and times from the origin', () => {
    const [sample] = samplesOf(1, () => [1, 2, 3, 4, 5, 6])
    expect(toBlock([{ ...sample!, tMs: 1250 }], 1000)).toEqual({
      tMs: Float64Array.of(250),
      values: Float32Array.of(1, 2, 3, 4, 5, 6),
    })
  })
})
