import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { recovered } from '../../src/recording/facts'
import { LEAD_IN_MS, TAIL_MS } from '../../src/recording/timing'
import type { OfferedTake, RecordSetup } from '../../src/recording/types'
import { fail, ok } from '../../src/shared/model/result'
import { AXES, STANDARD_GRAVITY_MPS2 } from '../../src/shared/model/sample'
import type { Store } from '../../src/storage/store'
import { Bench, LIBRARY, SETUP } from './bench'
import { PlayedSource, settle } from './played-source'

let bench: Bench

beforeEach(async () => {
  bench = await Bench.open()
})

afterEach(async () => {
  full = false
  await bench.close()
})

/** Records one hold-take around a movement and returns what is bench.offered. */
async function hold(
  movement: string | null,
  durationMs = 1500,
  setup: RecordSetup = SETUP,
): Promise<OfferedTake> {
  await bench.source.play(1500)
  const before = bench.offered.length
  expect(await bench.recorder.beginHold(setup, 'raise')).toEqual(ok(null))
  if (movement !== null) bench.source.hand.perform(movement)
  await bench.source.play(durationMs)
  const ended = bench.recorder.endHold()
  await bench.source.play(TAIL_MS + 50)
  await ended
  expect(bench.offered).toHaveLength(before + 1)
  return bench.offered.at(-1)!
}

let full = false
/** The store on a disk that is full from time to time. */
const small: Pick<Store, 'openJournal'> = {
  openJournal: async (recording) => {
    const journal = await bench.store.openJournal(recording)
    if (!journal.ok) return journal
    const { value } = journal
    const noRoom = fail('storage/full', 'No room.')
    return ok({
      append: async (block) => (full ? noRoom : await value.append(block)),
      finish: async (finished) => (full ? noRoom : await value.finish(finished)),
      discard: () => value.discard(),
      leave: () => value.leave(),
    })
  },
}

describe('a held take', () => {
  it('holds the rest before the press and a tail after the release', async () => {
    const { recording, samples } = await hold('swing')
    expect(samples.tMs[0]).toBe(0)
    expect(recording.durationMs).toBeGreaterThanOrEqual(LEAD_IN_MS + 1500 + TAIL_MS - 34)
    expect(recording.durationMs).toBeLessThanOrEqual(LEAD_IN_MS + 1500 + TAIL_MS + 67)
    const firstHalfSecond = samples.values.subarray(0, 30 * AXES)
    for (let row = 0; row < 30; row++) {
      const [ax, ay, az] = firstHalfSecond.subarray(row * AXES, row * AXES + 3)
      expect(Math.abs(Math.hypot(ax!, ay!, az!) - STANDARD_GRAVITY_MPS2)).toBeLessThan(1)
    }
  })

  it('says who made it with what, and that it is good', async () => {
    const { recording, quality } = await hold('swing')
    expect(recording).toMatchObject({
      kind: 'take',
      gestureId: 'raise',
      testerCode: 'A',
      hand: 'left',
      source: 'phone',
      device: { label: 'test bench', rateHz: 60, accelSign: 1, hasGyro: true },
      gaps: [],
      trim: null,
    })
    expect(quality.map(({ code }) => code)).toEqual(['good'])
    expect(quality[0]!.text).toMatch(/^\d\.\d s of movement up to \d+ deg\/s in \d+ samples/)
  })

  it('is trimmed to the press where the board is to be cut by a button, and not altered', async () => {
    const whole = await hold('swing')
    await bench.recorder.drop()
    const { recording, samples } = await hold('swing', 1500, { ...SETUP, trimToPress: true })
    const { startMs, endMs } = recording.trim!
    expect(Math.abs(startMs - LEAD_IN_MS)).toBeLessThan(34)
    expect(Math.abs(endMs - startMs - 1500)).toBeLessThan(34)
    expect(Math.abs(samples.tMs.length - whole.samples.tMs.length)).toBeLessThanOrEqual(2)
    expect(await bench.recorder.keep()).toEqual(ok(null))
    expect(await bench.store.listRecordings(LIBRARY.id)).toEqual([recording])
  })

  it('is stored when kept, samples and facts as offered', async () => {
    const { recording, samples } = await hold('swing')
    expect(await bench.recorder.keep()).toEqual(ok(null))
    expect(bench.offered).toEqual([])
    expect(bench.stored).toEqual([recording])
    expect(await bench.store.listRecordings(LIBRARY.id)).toEqual([recording])
    expect(await bench.store.loadSamples(recording.id)).toEqual(samples)
    expect(await bench.store.unfinished()).toEqual([])
  })

  it('leaves nothing when dropped', async () => {
    await hold('swing')
    await bench.recorder.drop()
    expect(bench.offered).toEqual([])
    expect(await bench.store.listRecordings(LIBRARY.id)).toEqual([])
    expect(await bench.store.unfinished()).toEqual([])
  })

  it('of a still hand says that nothing moved', async () => {
    const { quality } = await hold(null)
    expect(quality.map(({ code }) => code)).toEqual(['nothing-moved'])
  })

  it('pressed again during the tail loses nothing of the next', async () => {
    await bench.source.play(1500)
    await bench.recorder.beginHold(SETUP, 'raise')
    await bench.source.play(500)
    const ended = bench.recorder.endHold()
    await bench.source.play(100)
    const pressMs = bench.source.nowMs
    const again = bench.recorder.beginHold(SETUP, 'raise')
    await bench.source.play(600)
    await Promise.all([ended, again])
    const endedAgain = bench.recorder.endHold()
    const releaseMs = bench.source.nowMs
    await bench.source.play(TAIL_MS + 50)
    await endedAgain
    expect(bench.offered).toHaveLength(2)
    expect(bench.offered[1]!.recording.durationMs).toBeGreaterThan(
      LEAD_IN_MS + releaseMs - pressMs + TAIL_MS - 50,
    )
  })

  it('goes through its phases and back to idle', async () => {
    await hold('swing')
    expect(bench.phases).toEqual(['holding', 'saving', 'idle'])
  })

  it('ends although the readings stopped, and says where they are missing', async () => {
    await bench.source.play(1500)
    await bench.recorder.beginHold(SETUP, 'raise')
    await bench.source.play(500)
    bench.source.skip(300)
    await bench.source.play(200)
    bench.source.hub.setStatus('lost')
    await bench.recorder.endHold()
    const [take] = bench.offered
    expect(take!.recording.gaps).toHaveLength(1)
    expect(take!.recording.gaps[0]!.endMs - take!.recording.gaps[0]!.startMs).toBeCloseTo(317, 0)
    expect(take!.quality.map(({ code }) => code)).toContain('gap')
  })
})

describe('beginning', () => {
  it('is refused while the source does not run, with the reason', async () => {
    bench.source.stop()
    const refused = await bench.recorder.beginHold(SETUP, 'raise')
    expect(refused).toMatchObject({ ok: false, code: 'record/no-readings' })
    expect(bench.phases).toEqual([])
  })

  it('is refused while something else is recorded', async () => {
    await bench.source.play(100)
    await bench.recorder.beginBackground(SETUP)
    expect(await bench.recorder.beginHold(SETUP, 'raise')).toMatchObject({ code: 'record/busy' })
  })

  it('goes back to idle when the library is not there', async () => {
    await bench.source.play(1500)
    const refused = await bench.recorder.beginHold({ ...SETUP, libraryId: 'nowhere' }, 'raise')
    expect(refused).toMatchObject({ ok: false, code: 'storage/no-library' })
    expect(bench.recorder.phase()).toBe('idle')
    await bench.source.play(1500)
    expect(await bench.store.unfinished()).toEqual([])
  })
})

describe('the journal', () => {
  it('is never more than about a second behind', async () => {
    await bench.source.play(1500)
    await bench.recorder.beginHold(SETUP, 'raise')
    await bench.source.play(3700)
    const other = await bench.reopen()
    const [left] = await other.unfinished()
    const lostMs = LEAD_IN_MS + 3700 - left!.recording.durationMs
    expect(lostMs).toBeLessThanOrEqual(1034)
    other.close()
  })

  it('gives back an interrupted take with its gaps, fit to be kept', async () => {
    await bench.source.play(1500)
    await bench.recorder.beginHold(SETUP, 'raise')
    await bench.source.play(1500)
    bench.source.skip(200)
    await bench.source.play(1500)
    bench.source.hub.setStatus('lost')
    await settle()
    const other = await bench.reopen()
    const [left] = await other.unfinished()
    const kept = await other.finishUnfinished(left!.recording.id, recovered(left!))
    expect(kept).toMatchObject({ ok: true, value: { kind: 'take', gestureId: 'raise' } })
    const [recording] = await other.listRecordings(LIBRARY.id)
    expect(recording!.gaps).toHaveLength(1)
    expect(recording!.sampleCount).toBe(left!.samples.tMs.length)
    other.close()
  })

  it('that cannot be written for a while loses nothing', async () => {
    await bench.equip({ store: small })
    await bench.source.play(1500)
    await bench.recorder.beginHold(SETUP, 'raise')
    await bench.source.play(1000)
    full = true
    await bench.source.play(2000)
    expect(bench.troubles[0]).toMatchObject({ code: 'storage/full' })
    const ended = bench.recorder.endHold()
    await bench.source.play(TAIL_MS + 50)
    await ended
    expect(await bench.recorder.keep()).toMatchObject({ ok: false, code: 'storage/full' })
    expect(bench.offered).toHaveLength(1)
    full = false
    expect(await bench.recorder.keep()).toEqual(ok(null))
    const [recording] = await bench.store.listRecordings(LIBRARY.id)
    expect((await bench.store.loadSamples(recording!.id))!.tMs).toHaveLength(recording!.sampleCount)
    expect(recording!.durationMs).toBeGreaterThan(LEAD_IN_MS + 3000 + TAIL_MS - 50)
  })
})

describe('background', () => {
  it('is stored when stopped, from its press on', async () => {
    await bench.source.play(2000)
    await bench.recorder.beginBackground(SETUP)
    await bench.source.play(4000)
    expect(bench.recorder.elapsedMs()).toBeCloseTo(4000, -2)
    await bench.recorder.stop()
    expect(bench.stored).toHaveLength(1)
    expect(bench.stored[0]).toMatchObject({ kind: 'background', gaps: [], source: 'phone' })
    expect(bench.stored[0]!.durationMs).toBeCloseTo(4000, -2)
    expect(await bench.store.unfinished()).toEqual([])
  })
})

describe('background that ends on a full disk', () => {
  beforeEach(async () => {
    await bench.equip({ store: small })
    await bench.source.play(1500)
    await bench.recorder.beginBackground(SETUP)
    await bench.source.play(3000)
    full = true
    await bench.source.play(3000)
    await bench.recorder.stop()
    full = false
  })

  it('is held back whole, and stored once there is room', async () => {
    expect(bench.stored).toEqual([])
    expect(bench.troubles.at(-1)).toMatchObject({ code: 'storage/full' })
    expect(bench.recorder.phase()).toBe('idle')
    const [held] = bench.heldBack
    expect(held!.recording.durationMs).toBeCloseTo(6000, -2)
    full = true
    const refused = await bench.recorder.keepHeldBack(held!.recording.id)
    expect(refused).toMatchObject({ ok: false, code: 'storage/full' })
    expect(bench.heldBack).toHaveLength(1)
    full = false
    expect(await bench.recorder.keepHeldBack(held!.recording.id)).toEqual(ok(null))
    expect(bench.heldBack).toEqual([])
    expect(bench.stored).toEqual([held!.recording])
    expect(await bench.store.loadSamples(held!.recording.id)).toEqual(held!.samples)
    expect(await bench.store.unfinished()).toEqual([])
  })

  it('leaves nothing when it is dropped', async () => {
    await bench.recorder.dropHeldBack(bench.heldBack[0]!.recording.id)
    expect(bench.heldBack).toEqual([])
    expect(await bench.store.unfinished()).toEqual([])
    expect(await bench.store.listRecordings(LIBRARY.id)).toEqual([])
  })

  it('is offered as cut off, in the same tab too, when it is left', async () => {
    expect(await bench.store.unfinished()).toEqual([])
    await bench.recorder.leaveHeldBack()
    await settle()
    const [left] = await bench.store.unfinished()
    expect(left!.recording.durationMs).toBeGreaterThan(2000)
    expect(left!.recording.durationMs).toBeLessThan(4500)
  })
})

describe('the live trace', () => {
  it('holds the last seconds with times up to now', async () => {
    await bench.source.play(3000)
    const { tMs } = bench.recorder.trace(1000)
    expect(tMs.at(-1)).toBe(0)
    expect(tMs[0]).toBeGreaterThanOrEqual(-1000)
    expect(tMs.length).toBeGreaterThanOrEqual(60)
  })

  it('forgets the samples of another source', async () => {
    await bench.source.play(1000)
    await bench.recorder.use(new PlayedSource())
    expect(bench.recorder.trace(1000).tMs).toHaveLength(0)
  })
})
