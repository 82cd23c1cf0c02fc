import { describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import { boardCounts } from '../../../src/shared/board/decision/board-counts'
import { compareEvents, type TimedEvent } from '../../../src/shared/board/decision/compare-events'
import { decide } from '../../../src/shared/board/decision/decide'
import { compareEventLog, readEventLines } from '../../../src/shared/board/decision/event-log'
import {
  compareDecisions,
  seriesOfBoard,
  seriesOfPhone,
} from '../../../src/shared/board/decision/same-decision'
import type { BoardLog } from '../../../src/shared/board/log/board-log'
import { boardSamples } from '../../../src/shared/board/log/board-samples'
import { conditionRecording } from '../../../src/shared/conditioning/condition-recording'
import { generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import { eventLine } from '../../../src/shared/firmware/vector'
import { AXES, type SampleBlock } from '../../../src/shared/model/sample'
import { replayRecording } from '../../../src/shared/replay/replay-recording'
import { trainModel } from '../../../src/shared/training/train-model'

const core = await loadCoreForNode()
const full = await generateDemoLibrary(5)
const { target } = full.library
const trained = trainModel(core, full)
if (!trained.ok) throw new Error(trained.message)
const { model } = trained.value

/**
 * Some takes of one tester after another, as the phone would have recorded them in one go.
 * @param pauseMs without readings in the middle
 */
function longRecording(pauseMs = 0): SampleBlock {
  const takes = full.recordings.filter(({ recording }) => recording.kind === 'take').slice(0, 10)
  const tMs: number[] = []
  const values: number[] = []
  for (const [i, { samples }] of takes.entries()) {
    const start = tMs.length === 0 ? 0 : tMs.at(-1)! + 1000 / 60 + (i === 5 ? pauseMs : 0)
    for (const t of samples.tMs) tMs.push(start + t)
    values.push(...samples.values)
  }
  return { tMs: Float64Array.from(tMs), values: Float32Array.from(values) }
}

/** The same with the hand at rest while there were no readings, as a board beside it saw. */
function bridged({ tMs, values }: SampleBlock, at: number): SampleBlock {
  const [from, to] = [tMs[at - 1]!, tMs[at]!]
  const times = Array.from({ length: Math.floor(((to - from) * 60) / 1000) - 1 }, (_, i) => {
    return from + ((i + 1) * 1000) / 60
  })
  const rest = [...values.slice((at - 1) * AXES, (at - 1) * AXES + 3), 0, 0, 0]
  return {
    tMs: Float64Array.from([...tMs.slice(0, at), ...times, ...tMs.slice(at)]),
    values: Float32Array.from([
      ...values.slice(0, at * AXES),
      ...times.flatMap(() => rest),
      ...values.slice(at * AXES),
    ]),
  }
}

/** A board that read exactly what conditioning says it would, offset added and clock started later. */
function boardLogOf(samples: SampleBlock, zero: number[], skip: number): BoardLog {
  const { counts, rateHz } = conditionRecording(samples, target, 1)
  const rows = counts.length / AXES - skip
  const values = Float64Array.from(
    counts.subarray(skip * AXES),
    (count, i) => count + zero[i % AXES]!,
  )
  return {
    values,
    accelUnit: 'count',
    gyroUnit: 'count',
    tMs: Float64Array.from({ length: rows }, (_, i) => (1000 * i) / rateHz),
    clock: 'board',
    problems: [],
    problemCount: 0,
  }
}

describe('a board log as a recording', () => {
  it('has no turn where nothing measured it, whatever offset the calibration found', () => {
    const log = { ...boardLogOf(longRecording(), [0, 0, 0, 0, 0, 0], 0), gyroUnit: null }
    for (const at of log.values.keys()) if (at % AXES > 2) log.values[at] = 0
    const zero = [10, -20, 30, 400, -300, 200]
    const samples = boardSamples(log, { ...target, calibration: { zero, correctionQ14: [] } })
    if (!samples.ok) throw new Error(samples.message)
    expect(samples.value.values.filter((value, i) => i % AXES > 2 && value !== 0)).toHaveLength(0)
  })
})

describe('a board log through the core', () => {
  const phone = longRecording()
  const zero = [100, -50, 25, 30, -20, 10]
  const calibrated = { ...target, calibration: { zero, correctionQ14: [] } }

  it('decides as the phone did when the board read the same, its offsets taken out', () => {
    const log = boardLogOf(phone, zero, 20)
    const decision = decide(core, model, calibrated, log)
    const replay = replayRecording(core, model, target, phone, 1)
    if (!decision.ok || !replay.ok) throw new Error('neither may fail')
    const compared = compareDecisions(
      { series: seriesOfPhone(phone, 1), replay: replay.value },
      { series: seriesOfBoard(log, target), decision: decision.value },
    )
    if (!compared.ok) throw new Error(compared.message)
    const { pairs, same, times, firstDifference } = compared.value
    expect(pairs.length).toBeGreaterThanOrEqual(8)
    expect(same).toBe(pairs.length)
    expect(firstDifference).toBeNull()
    expect(Math.abs(times.lagMs + (20 * 1000) / target.rateHz)).toBeLessThan(15)
  })

  it('decides as the phone did also where the phone had no readings for longer than is bridged', () => {
    const pauseMs = 6000
    const paused = longRecording(pauseMs)
    const at = paused.tMs.findIndex((t, i) => i > 0 && t - paused.tMs[i - 1]! > pauseMs)
    const log = boardLogOf(bridged(paused, at), [0, 0, 0, 0, 0, 0], 0)
    const decision = decide(core, model, target, log)
    const replay = replayRecording(core, model, target, paused, 1)
    if (!decision.ok || !replay.ok) throw new Error('neither may fail')
    const compared = compareDecisions(
      { series: seriesOfPhone(paused, 1), replay: replay.value },
      { series: seriesOfBoard(log, target), decision: decision.value },
    )
    if (!compared.ok) throw new Error(compared.message)
    const { pairs, same } = compared.value
    expect(pairs.length).toBeGreaterThanOrEqual(8)
    expect(same).toBe(pairs.length)
  })

  it('agrees with the event log of a device word for word, and names the first event that differs', () => {
    const log = boardLogOf(phone, zero, 0)
    const decision = decide(core, model, calibrated, log)
    if (!decision.ok) throw new Error(decision.message)
    const { events } = decision.value
    const printed = `init 0\r\n${events.map((event) => `12:00:01 > ${eventLine(event)}`).join('\r\n')}\r\nend 900\r\n`
    const lines = readEventLines(printed)
    if (!lines.ok) throw new Error(lines.message)
    expect(compareEventLog(events, lines.value)).toMatchObject({
      same: true,
      total: events.length,
      first: null,
    })
    const altered = [...lines.value]
    altered[2] = altered[2]!.replace(/^event (\d+)/, (_, n) => `event ${Number(n) + 1}`)
    const found = compareEventLog(events, altered)
    expect(found).toMatchObject({ same: false, agreeing: 2 })
    expect(found.first?.found).toBe(altered[2])
    expect(found.first?.cause).toMatch(/cut elsewhere/)
    expect(compareEventLog(events, lines.value.slice(0, 1)).first?.found).toBeNull()
    expect(readEventLines('event 1 2 gesture')).toMatchObject({ ok: false, code: 'events/line' })
    expect(readEventLines('nothing here')).toMatchObject({ ok: false, code: 'events/none' })
  })

  it('is refused for a model cut by a button, as it does not say when that was down', () => {
    const decision = decide(core, { ...model, button: true }, target, boardLogOf(phone, zero, 0))
    expect(decision).toMatchObject({ ok: false, code: 'decide/button' })
  })

  it('is refused where the core on the board would refuse, with the reason', () => {
    const log = boardLogOf(phone, zero, 0)
    const slow = { ...log, tMs: log.tMs!.map((t) => 2 * t) }
    expect(boardCounts(slow, target)).toMatchObject({ ok: false, code: 'decide/rate' })
    const wide = { ...log, values: log.values.map((v, i) => (i === 5 ? 40_000 : v)) }
    expect(boardCounts(wide, target)).toMatchObject({ ok: false, code: 'decide/words' })
    expect(boardCounts({ ...log, gyroUnit: null }, target)).toMatchObject({
      ok: false,
      code: 'decide/no-gyro',
    })
  })

  it('saturates as mvw_push does when offsets are taken out', () => {
    const log = {
      ...boardLogOf(phone, zero, 0),
      values: Float64Array.from([32767, -32768, 0, 0, 0, 0]),
      tMs: null,
    }
    const edge = { ...target, calibration: { zero: [-1, 1, 5, 0, 0, 0], correctionQ14: [] } }
    const counts = boardCounts(log, edge)
    expect(counts.ok && [...counts.value]).toEqual([32767, -32768, -5, 0, 0, 0])
  })
})

describe('events side by side', () => {
  const at = (atMs: number, gesture: number | null): TimedEvent => ({
    atMs,
    event: {
      kind: gesture === null ? 'reject' : 'gesture',
      reason: gesture === null ? 'far' : 'none',
      roll: 'aligned',
      gesture: gesture ?? 0,
      runnerUp: null,
      start: 0,
      end: 10,
      distance: 5,
      threshold: 9,
      runnerUpDistance: null,
    },
  })

  it('pairs by time and says how each pair differs', () => {
    const phone = [at(1000, 0), at(3000, 1), at(5000, 2), at(7000, null), at(9000, 1)]
    const board = [at(1050, 0), at(2900, 2), at(5100, null), at(7000, 0), at(12_000, 1)]
    const { pairs, same, firstDifference } = compareEvents(phone, board)
    expect(pairs.map(({ outcome }) => outcome)).toEqual([
      'same',
      'other-gesture',
      'board-rejects',
      'phone-rejects',
      'only-phone',
      'only-board',
    ])
    expect(same).toBe(1)
    expect(firstDifference?.phone?.atMs).toBe(3000)
  })
})
