import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core, CoreEvent } from '../../../src/shared/core/core'
import type { TrainedModel } from '../../../src/shared/model/evaluation'
import type { FullLibrary, RecordingWithSamples, Trim } from '../../../src/shared/model/library'
import { AXES } from '../../../src/shared/model/sample'
import { replayRecording } from '../../../src/shared/replay/replay-recording'
import { cutTake } from '../../../src/shared/training/cut-take'
import { conditionOne, prepareLibrary } from '../../../src/shared/training/prepare'
import { HAND_MARGIN_MS, pressedSpan } from '../../../src/shared/training/press'
import { trainModel } from '../../../src/shared/training/train-model'
import { LiveRun } from '../../../workers/recogniser/live-run'
import { tinyLibrary } from './tiny-library'

let core: Core
let full: FullLibrary
let trained: TrainedModel

/** The tiny library for a board with a button; every other take was held and says so. */
function heldLibrary(): FullLibrary {
  const { library, recordings } = tinyLibrary()
  return {
    library: { ...library, training: { ...library.training, segmentation: 'button' } },
    recordings: recordings.map((one, i) =>
      one.recording.kind === 'take' && i % 2 === 0
        ? { ...one, recording: { ...one.recording, trim: pressOf(one) } }
        : one,
    ),
  }
}

function pressOf({ samples }: RecordingWithSamples): Trim {
  const last = samples.tMs.at(-1)!
  return { startMs: 0.2 * last, endMs: 0.85 * last }
}

beforeAll(async () => {
  core = await loadCoreForNode()
  full = heldLibrary()
  const result = trainModel(core, full)
  if (!result.ok) throw new Error(result.message)
  trained = result.value
}, 60_000)

/** What the evaluation goes by. */
function evaluated(one: RecordingWithSamples): CoreEvent {
  core.load(trained.bytes)
  return cutTake(core, conditionOne(one, full.library.target), trained.model).movement!.event
}

function replayed({ recording, samples }: RecordingWithSamples): CoreEvent[] {
  const { accelSign } = recording.device
  const trim = recording.kind === 'take' ? recording.trim : 'background'
  const { target } = full.library
  const result = replayRecording(core, trained.model, target, samples, accelSign, trim)
  if (!result.ok) throw new Error(result.message)
  return result.value.events
}

const takes = () => full.recordings.filter(({ recording }) => recording.kind === 'take')
const held = () =>
  takes().filter(({ recording }) => recording.kind === 'take' && recording.trim !== null)

describe('a button held over a take', () => {
  it('cuts the same in evaluation and replay', () => {
    expect(takes().length).toBeGreaterThan(10)
    for (const one of takes()) expect(replayed(one)).toEqual([evaluated(one)])
  })

  it('cuts the same live, when it is pressed and released as then', async () => {
    const other = await loadCoreForNode()
    for (const one of held()) {
      const { recording, samples } = one
      const { startMs, endMs } = pressOf(one)
      const live = new LiveRun(
        other,
        trained.model,
        full.library.target,
        recording.device.accelSign,
      )
      const { events } = live.push(samples, [
        { tMs: startMs, down: true },
        { tMs: endMs, down: false },
      ])
      expect(events.map(({ event }) => event)).toEqual([evaluated(one)])
    }
  })

  it('counts from the sample it belongs to, whatever blocks samples come in', async () => {
    const [one] = held() as [RecordingWithSamples]
    const { samples, recording } = one
    const { startMs, endMs } = pressOf(one)
    const { accelSign } = recording.device
    const live = new LiveRun(await loadCoreForNode(), trained.model, full.library.target, accelSign)
    const events = [...samples.tMs].flatMap((tMs, i) => {
      const before = i === 0 ? Number.NEGATIVE_INFINITY : samples.tMs[i - 1]!
      const changes = [
        { tMs: startMs, down: true },
        { tMs: endMs, down: false },
      ].filter((change) => change.tMs > before && change.tMs <= tMs)
      const values = samples.values.subarray(i * AXES, (i + 1) * AXES)
      return live.push({ tMs: Float64Array.of(tMs), values }, changes).events
    })
    expect(events.map(({ event }) => event)).toEqual([evaluated(one)])
  })

  it('brings no answer to movements that nobody pressed it for', async () => {
    const live = new LiveRun(await loadCoreForNode(), trained.model, full.library.target, 1)
    for (const { samples } of takes().slice(0, 1)) expect(live.push(samples).events).toEqual([])
  })
})

describe('the span of a press', () => {
  const rateHz = () => full.library.target.rateHz
  const spanOf = (one: RecordingWithSamples) => {
    core.load(trained.bytes)
    return pressedSpan(core, conditionOne(one, full.library.target), trained.model)
  }

  it('is the trim of a take that has one', () => {
    for (const one of held()) {
      const { from, to } = spanOf(one)
      expect(Math.abs(from - (pressOf(one).startMs / 1000) * rateHz())).toBeLessThan(2)
      expect(Math.abs(to - (pressOf(one).endMs / 1000) * rateHz())).toBeLessThan(2)
    }
  })

  it('is what moves with a margin where a take is whole', () => {
    const margin = Math.round((HAND_MARGIN_MS / 1000) * rateHz())
    const { onThreshold, offThreshold } = trained.model.segmenter
    for (const one of takes().filter((each) => !held().includes(each))) {
      const { counts, to: recorded } = conditionOne(one, full.library.target)
      const energy = new Uint32Array(counts.length / AXES)
      core.load(trained.bytes)
      core.push(counts, { energy, phase: new Uint8Array(energy.length) })
      const least = (limit: number) =>
        [...energy.keys()].filter((at) => at < recorded && energy[at]! >= limit)
      const { from, to } = spanOf(one)
      expect(from).toBe(Math.max(0, least(onThreshold)[0]! - margin))
      expect(to).toBe(Math.min(recorded, least(offThreshold).at(-1)! + 1 + margin))
    }
  })

  it('is the whole take where nothing moves: a pose was held', () => {
    const [{ recording, samples }] = takes() as [RecordingWithSamples]
    const still = { ...samples, values: samples.values.map((_, i) => (i % AXES === 2 ? 9.81 : 0)) }
    const one = { recording: { ...recording, trim: null }, samples: still } as RecordingWithSamples
    const { to } = conditionOne(one, full.library.target)
    expect(spanOf(one)).toEqual({ from: 0, to })
  })
})

describe('notes of training', () => {
  it('say of how many takes the press is not known, and what is assumed', () => {
    const { takes: prepared } = prepareLibrary(full)
    const whole = prepared.filter(({ whole: is }) => is === true).length
    expect(trained.notes.join(' ')).toContain(
      `not known of ${whole} of ${prepared.length} takes: it is taken to be held from 150\u202fms before`,
    )
  })

  it('say nothing of a button where movements are cut by motion', () => {
    const result = trainModel(core, tinyLibrary())
    expect(result.ok && result.value.notes.join(' ')).not.toContain('button')
  })
})
