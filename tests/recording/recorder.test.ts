import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import { recovered } from '../../src/recording/facts'
import type { LiveClient } from '../../src/recording/live-cutter'
import { Recorder } from '../../src/recording/recorder'
import { LEAD_IN_MS, TAIL_MS } from '../../src/recording/timing'
import type { OfferedTake, RecordPhase } from '../../src/recording/types'
import type { Recording } from '../../src/shared/model/library'
import { type Failure, fail, ok } from '../../src/shared/model/result'
import { AXES, STANDARD_GRAVITY_MPS2 } from '../../src/shared/model/sample'
import { openStore } from '../../src/storage/open-store'
import type { Store } from '../../src/storage/store'
import { LiveRun } from '../../workers/recogniser/live-run'
import { exampleLibrary } from '../storage/examples'
import { PlayedSource, settle } from './played-source'

const LIBRARY = exampleLibrary()
const SETUP = {
  libraryId: LIBRARY.id,
  testerCode: 'A',
  hand: 'left' as const,
  target: LIBRARY.target,
}

/** The worker's own live recognition, on this thread. */
function liveClient(): LiveClient {
  let run: LiveRun | null = null
  return {
    openLive: async (model, target, sign) => {
      run = new LiveRun(await loadCoreForNode(), model, target, sign)
      return ok(null)
    },
    pushLive: async (samples) => (run === null ? fail('live', 'closed') : ok(run.push(samples))),
    closeLive: async () => {
      run = null
      return ok(null)
    },
  }
}

let count = 0
let store: Store
let source: PlayedSource
let recorder: Recorder
let offered: readonly OfferedTake[]
let phases: RecordPhase[]
let stored: Recording[]
let troubles: Failure[]
let ignored: string[]

function makeRecorder(over: { store?: Pick<Store, 'openJournal'>; client?: LiveClient } = {}) {
  return new Recorder({
    store,
    client: liveClient(),
    newId: () => `id-${count}-${Math.random()}`,
    deviceLabel: 'test bench',
    events: {
      onPhase: (phase) => phases.push(phase),
      onOffered: (takes) => {
        offered = takes
      },
      onStored: (recording) => stored.push(recording),
      onIgnored: (message) => ignored.push(message),
      onTrouble: (failure) => troubles.push(failure),
    },
    ...over,
  })
}

beforeEach(async () => {
  count += 1
  store = await openStore(`recorder-${count}`)
  await store.putLibrary(LIBRARY)
  source = new PlayedSource()
  offered = []
  phases = []
  stored = []
  troubles = []
  ignored = []
  recorder = makeRecorder()
  await recorder.use(source)
  await source.start()
})

afterEach(async () => {
  await recorder.stop()
  store.close()
})

/** Records one hold-take around a movement and returns what is offered. */
async function hold(movement: string | null, durationMs = 1500): Promise<OfferedTake> {
  await source.play(1500)
  const before = offered.length
  expect(await recorder.beginHold(SETUP, 'raise')).toEqual(ok(null))
  if (movement !== null) source.hand.perform(movement)
  await source.play(durationMs)
  const ended = recorder.endHold()
  await source.play(TAIL_MS + 50)
  await ended
  expect(offered).toHaveLength(before + 1)
  return offered.at(-1)!
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

  it('is stored when kept, samples and facts as offered', async () => {
    const { recording, samples } = await hold('swing')
    expect(await recorder.keep()).toEqual(ok(null))
    expect(offered).toEqual([])
    expect(stored).toEqual([recording])
    expect(await store.listRecordings(LIBRARY.id)).toEqual([recording])
    expect(await store.loadSamples(recording.id)).toEqual(samples)
    expect(await store.unfinished()).toEqual([])
  })

  it('leaves nothing when dropped', async () => {
    await hold('swing')
    await recorder.drop()
    expect(offered).toEqual([])
    expect(await store.listRecordings(LIBRARY.id)).toEqual([])
    expect(await store.unfinished()).toEqual([])
  })

  it('of a still hand says that nothing moved', async () => {
    const { quality } = await hold(null)
    expect(quality.map(({ code }) => code)).toEqual(['nothing-moved'])
  })

  it('pressed again during the tail loses nothing of the next', async () => {
    await source.play(1500)
    await recorder.beginHold(SETUP, 'raise')
    await source.play(500)
    const ended = recorder.endHold()
    await source.play(100)
    const pressMs = source.nowMs
    const again = recorder.beginHold(SETUP, 'raise')
    await source.play(600)
    await Promise.all([ended, again])
    const endedAgain = recorder.endHold()
    const releaseMs = source.nowMs
    await source.play(TAIL_MS + 50)
    await endedAgain
    expect(offered).toHaveLength(2)
    expect(offered[1]!.recording.durationMs).toBeGreaterThan(
      LEAD_IN_MS + releaseMs - pressMs + TAIL_MS - 50,
    )
  })

  it('goes through its phases and back to idle', async () => {
    await hold('swing')
    expect(phases).toEqual(['holding', 'saving', 'idle'])
  })

  it('ends although the readings stopped, and says where they are missing', async () => {
    await source.play(1500)
    await recorder.beginHold(SETUP, 'raise')
    await source.play(500)
    source.skip(300)
    await source.play(200)
    source.hub.setStatus('lost')
    await recorder.endHold()
    const [take] = offered
    expect(take!.recording.gaps).toHaveLength(1)
    expect(take!.recording.gaps[0]!.endMs - take!.recording.gaps[0]!.startMs).toBeCloseTo(317, 0)
    expect(take!.quality.map(({ code }) => code)).toContain('gap')
  })
})

describe('beginning', () => {
  it('is refused while the source does not run, with the reason', async () => {
    source.stop()
    const refused = await recorder.beginHold(SETUP, 'raise')
    expect(refused).toMatchObject({ ok: false, code: 'record/no-readings' })
    expect(phases).toEqual([])
  })

  it('is refused while something else is recorded', async () => {
    await source.play(100)
    await recorder.beginBackground(SETUP)
    expect(await recorder.beginHold(SETUP, 'raise')).toMatchObject({ code: 'record/busy' })
  })

  it('goes back to idle when the library is not there', async () => {
    await source.play(1500)
    const refused = await recorder.beginHold({ ...SETUP, libraryId: 'nowhere' }, 'raise')
    expect(refused).toMatchObject({ ok: false, code: 'storage/no-library' })
    expect(recorder.phase()).toBe('idle')
    await source.play(1500)
    expect(await store.unfinished()).toEqual([])
  })
})

describe('the journal', () => {
  it('is never more than about a second behind', async () => {
    await source.play(1500)
    await recorder.beginHold(SETUP, 'raise')
    await source.play(3700)
    const other = await openStore(`recorder-${count}`)
    const [left] = await other.unfinished()
    const lostMs = LEAD_IN_MS + 3700 - left!.recording.durationMs
    expect(lostMs).toBeLessThanOrEqual(1034)
    other.close()
  })

  it('gives back an interrupted take with its gaps, fit to be kept', async () => {
    await source.play(1500)
    await recorder.beginHold(SETUP, 'raise')
    await source.play(1500)
    source.skip(200)
    await source.play(1500)
    source.hub.setStatus('lost')
    await settle()
    const other = await openStore(`recorder-${count}`)
    const [left] = await other.unfinished()
    const kept = await other.finishUnfinished(left!.recording.id, recovered(left!))
    expect(kept).toMatchObject({ ok: true, value: { kind: 'take', gestureId: 'raise' } })
    const [recording] = await other.listRecordings(LIBRARY.id)
    expect(recording!.gaps).toHaveLength(1)
    expect(recording!.sampleCount).toBe(left!.samples.tMs.length)
    other.close()
  })

  it('that cannot be written for a while loses nothing', async () => {
    let full = false
    const flaky: Pick<Store, 'openJournal'> = {
      openJournal: async (recording) => {
        const journal = await store.openJournal(recording)
        if (!journal.ok) return journal
        const { value } = journal
        return ok({
          append: async (block) =>
            full ? fail('storage/full', 'No room.') : await value.append(block),
          finish: (finished) => value.finish(finished),
          discard: () => value.discard(),
        })
      },
    }
    recorder = makeRecorder({ store: flaky })
    await recorder.use(source)
    await source.play(1500)
    await recorder.beginHold(SETUP, 'raise')
    await source.play(1000)
    full = true
    await source.play(2000)
    expect(troubles[0]).toMatchObject({ code: 'storage/full' })
    const ended = recorder.endHold()
    await source.play(TAIL_MS + 50)
    await ended
    expect(await recorder.keep()).toMatchObject({ ok: false, code: 'storage/full' })
    expect(offered).toHaveLength(1)
    full = false
    expect(await recorder.keep()).toEqual(ok(null))
    const [recording] = await store.listRecordings(LIBRARY.id)
    expect((await store.loadSamples(recording!.id))!.tMs).toHaveLength(recording!.sampleCount)
    expect(recording!.durationMs).toBeGreaterThan(LEAD_IN_MS + 3000 + TAIL_MS - 50)
  })
})

describe('background', () => {
  it('is stored when stopped, from its press on', async () => {
    await source.play(2000)
    await recorder.beginBackground(SETUP)
    await source.play(4000)
    expect(recorder.elapsedMs()).toBeCloseTo(4000, -2)
    await recorder.stop()
    expect(stored).toHaveLength(1)
    expect(stored[0]).toMatchObject({ kind: 'background', gaps: [], source: 'phone' })
    expect(stored[0]!.durationMs).toBeCloseTo(4000, -2)
    expect(await store.unfinished()).toEqual([])
  })
})

describe('hands-free', () => {
  it('offers each movement with rest before and after, and journals no rest', async () => {
    await source.play(1500)
    expect(await recorder.beginHandsFree(SETUP, 'raise')).toEqual(ok(null))
    await source.play(2000)
    expect(await store.unfinished()).toEqual([])
    for (const movement of ['swing', 'raise', 'knock']) {
      source.hand.perform(movement)
      await source.play(4500)
    }
    expect(offered).toHaveLength(3)
    for (const { samples, quality } of offered) {
      expect(quality.map(({ code }) => code)).toEqual(['good'])
      const fast = movingRows(samples.values)
      const firstMs = samples.tMs[fast[0]!]!
      expect(firstMs).toBeGreaterThanOrEqual(700)
      expect(samples.tMs.at(-1)! - samples.tMs[fast.at(-1)!]!).toBeGreaterThanOrEqual(TAIL_MS - 150)
    }
    await recorder.stop()
    expect(phases).toEqual(['hands-free', 'saving', 'idle'])
  })

  it('keeps and drops oldest first, after it was stopped as well', async () => {
    await source.play(1500)
    await recorder.beginHandsFree(SETUP, 'raise')
    await source.play(1000)
    for (const movement of ['swing', 'raise']) {
      source.hand.perform(movement)
      await source.play(4500)
    }
    await recorder.stop()
    const [first, second] = offered
    await recorder.drop()
    expect(offered).toEqual([second])
    await recorder.keep()
    expect((await store.listRecordings(LIBRARY.id)).map(({ id }) => id)).toEqual([
      second!.recording.id,
    ])
    expect(await store.loadSamples(first!.recording.id)).toBeNull()
    expect(await store.unfinished()).toEqual([])
  })

  it('has a movement under way in the journal before it ends', async () => {
    await source.play(1500)
    await recorder.beginHandsFree(SETUP, 'raise')
    await source.play(1000)
    source.hand.perform('swing')
    await source.play(1200)
    const other = await openStore(`recorder-${count}`)
    const [left] = await other.unfinished()
    expect(left!.recording.durationMs).toBeGreaterThan(900)
    other.close()
    await recorder.stop()
    expect(await store.unfinished()).toEqual([])
  })

  it('leaves out a movement that does not end, with a sentence', async () => {
    await source.play(1500)
    await recorder.beginHandsFree(SETUP, 'raise')
    for (let i = 0; i < 200; i++) {
      source.hand.drag(i % 20 < 10 ? 40 : -40, 0, 50)
      await source.play(50)
    }
    await source.play(4000)
    expect(ignored[0]).toMatch(/did not end in time/)
    expect(await store.unfinished()).toHaveLength(offered.length)
  })

  it('stops with a sentence when the recogniser fails', async () => {
    recorder = makeRecorder({
      client: {
        ...liveClient(),
        pushLive: async () => fail('worker/crashed', 'The recogniser stopped: start again.'),
      },
    })
    await recorder.use(source)
    await recorder.beginHandsFree(SETUP, 'raise')
    await source.play(500)
    expect(troubles).toEqual([fail('worker/crashed', 'The recogniser stopped: start again.')])
    expect(recorder.phase()).toBe('idle')
  })

  it('does not begin when the recogniser does not open', async () => {
    recorder = makeRecorder({
      client: { ...liveClient(), openLive: async () => fail('worker/crashed', 'No worker.') },
    })
    await recorder.use(source)
    expect(await recorder.beginHandsFree(SETUP, 'raise')).toMatchObject({ code: 'worker/crashed' })
    expect(recorder.phase()).toBe('idle')
  })
})

describe('the live trace', () => {
  it('holds the last seconds with times up to now', async () => {
    await source.play(3000)
    const { tMs } = recorder.trace(1000)
    expect(tMs.at(-1)).toBe(0)
    expect(tMs[0]).toBeGreaterThanOrEqual(-1000)
    expect(tMs.length).toBeGreaterThanOrEqual(60)
  })

  it('forgets the samples of another source', async () => {
    await source.play(1000)
    await recorder.use(new PlayedSource())
    expect(recorder.trace(1000).tMs).toHaveLength(0)
  })
})

/** Rows in which the hand turns faster than a still hand does. */
function movingRows(values: Float32Array): number[] {
  return Array.from({ length: values.length / AXES }, (_, row) => row).filter((row) => {
    const [gx, gy, gz] = values.subarray(row * AXES + 3, row * AXES + 6)
    return Math.hypot(gx!, gy!, gz!) > 25
  })
}
