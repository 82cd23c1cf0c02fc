import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { TAIL_MS } from '../../src/recording/timing'
import { fail, ok } from '../../src/shared/model/result'
import { AXES } from '../../src/shared/model/sample'
import { Bench, LIBRARY, liveClient, SETUP } from './bench'

let bench: Bench

beforeEach(async () => {
  bench = await Bench.open()
})

afterEach(() => bench.close())

describe('hands-free', () => {
  it('offers each movement with rest before and after, and journals no rest', async () => {
    await bench.source.play(1500)
    expect(await bench.recorder.beginHandsFree(SETUP, 'raise')).toEqual(ok(null))
    await bench.source.play(2000)
    expect(await bench.store.unfinished()).toEqual([])
    for (const movement of ['swing', 'raise', 'knock']) {
      bench.source.hand.perform(movement)
      await bench.source.play(4500)
    }
    expect(bench.offered).toHaveLength(3)
    for (const { samples, quality } of bench.offered) {
      expect(quality.map(({ code }) => code)).toEqual(['good'])
      const fast = movingRows(samples.values)
      const firstMs = samples.tMs[fast[0]!]!
      expect(firstMs).toBeGreaterThanOrEqual(700)
      expect(samples.tMs.at(-1)! - samples.tMs[fast.at(-1)!]!).toBeGreaterThanOrEqual(TAIL_MS - 150)
    }
    await bench.recorder.stop()
    expect(bench.phases).toEqual(['hands-free', 'saving', 'idle'])
  })

  it('keeps and drops oldest first, after it was stopped as well', async () => {
    await bench.source.play(1500)
    await bench.recorder.beginHandsFree(SETUP, 'raise')
    await bench.source.play(1000)
    for (const movement of ['swing', 'raise']) {
      bench.source.hand.perform(movement)
      await bench.source.play(4500)
    }
    await bench.recorder.stop()
    const [first, second] = bench.offered
    await bench.recorder.drop()
    expect(bench.offered).toEqual([second])
    await bench.recorder.keep()
    expect((await bench.store.listRecordings(LIBRARY.id)).map(({ id }) => id)).toEqual([
      second!.recording.id,
    ])
    expect(await bench.store.loadSamples(first!.recording.id)).toBeNull()
    expect(await bench.store.unfinished()).toEqual([])
  })

  it('has a movement under way in the journal before it ends', async () => {
    await bench.source.play(1500)
    await bench.recorder.beginHandsFree(SETUP, 'raise')
    await bench.source.play(1000)
    bench.source.hand.perform('swing')
    await bench.source.play(1200)
    const other = await bench.reopen()
    const [left] = await other.unfinished()
    expect(left!.recording.durationMs).toBeGreaterThan(900)
    other.close()
    await bench.recorder.stop()
    expect(await bench.store.unfinished()).toEqual([])
  })

  it('leaves out a movement that does not end, with a sentence', async () => {
    await bench.source.play(1500)
    await bench.recorder.beginHandsFree(SETUP, 'raise')
    for (let i = 0; i < 200; i++) {
      bench.source.hand.drag(i % 20 < 10 ? 40 : -40, 0, 50)
      await bench.source.play(50)
    }
    await bench.source.play(4000)
    expect(bench.ignored[0]).toMatch(/did not end in time/)
    expect(await bench.store.unfinished()).toHaveLength(bench.offered.length)
  })

  it('stops with a sentence when the recogniser fails', async () => {
    await bench.equip({
      client: {
        ...liveClient(),
        pushLive: async () => fail('worker/crashed', 'The recogniser stopped: start again.'),
      },
    })
    await bench.recorder.beginHandsFree(SETUP, 'raise')
    await bench.source.play(500)
    expect(bench.troubles).toEqual([fail('worker/crashed', 'The recogniser stopped: start again.')])
    expect(bench.recorder.phase()).toBe('idle')
  })

  it('does not begin when the recogniser does not open', async () => {
    await bench.equip({
      client: { ...liveClient(), openLive: async () => fail('worker/crashed', 'No worker.') },
    })
    expect(await bench.recorder.beginHandsFree(SETUP, 'raise')).toMatchObject({
      code: 'worker/crashed',
    })
    expect(bench.recorder.phase()).toBe('idle')
  })
})

/** Rows in which the hand turns faster than a still hand does. */
function movingRows(values: Float32Array): number[] {
  return Array.from({ length: values.length / AXES }, (_, row) => row).filter((row) => {
    const [gx, gy, gz] = values.subarray(row * AXES + 3, row * AXES + 6)
    return Math.hypot(gx!, gy!, gz!) > 25
  })
}
