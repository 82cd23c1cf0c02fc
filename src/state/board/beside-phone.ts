import type { RecogniserClient } from '../../recogniser/client'
import { type Calibration, calibrate } from '../../shared/board/calibration/calibrate'
import {
  compareEventLog,
  type LineComparison,
  readEventLines,
} from '../../shared/board/decision/event-log'
import {
  compareDecisions,
  type SameDecision,
  seriesOfBoard,
  seriesOfPhone,
} from '../../shared/board/decision/same-decision'
import type { BoardLog } from '../../shared/board/log/board-log'
import { boardSamples } from '../../shared/board/log/board-samples'
import { type FoundMounting, findMounting } from '../../shared/board/mounting/find-mounting'
import type { Recording } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import type { SampleBlock } from '../../shared/model/sample'
import type { Matrix3, Target } from '../../shared/model/target'
import { BOARD_LINK } from '../../shared/words/en/board-link'
import { OPEN_LIBRARY } from '../../shared/words/en/open-library'
import type { App, LogLabels } from '../app'
import type { Shelf } from '../shelf'
import type { BenchState } from './bench'

/** What a board's logs give beside the library: calibration, mounting, and whether both decide alike. */
export interface BesidePhone {
  calibrate(squareBlock: boolean): Result<Calibration>
  /** Stores a calibration in the target; null takes it away. */
  keepCalibration(calibration: Calibration | null): Promise<void>
  findMounting(recordingId: string): Promise<Result<FoundMounting>>
  keepMounting(matrix: Matrix3): Promise<void>
  compare(recordingId: string): Promise<Result<SameDecision>>
  /** Stores the log moved freely as a recording of the library, with source 'board'. */
  keepLog(labels: LogLabels): Promise<Result<null>>
  /** The device's own event log against the core over the same samples. */
  compareLog(text: string): Promise<Result<LineComparison>>
}

const NO_LOG = fail('board/no-log', BOARD_LINK.noFreeLog)
const NO_LIBRARY = fail('board/no-library', OPEN_LIBRARY.none)

export interface BesideParts {
  shelf: Shelf
  bench: BenchState
  recogniser: RecogniserClient
  train: App['train']
  replay: App['replay']
  update: App['library']['update']
  addLogs: App['library']['addLogs']
}

export function createBesidePhone(parts: BesideParts): BesidePhone {
  const { shelf, bench, recogniser } = parts
  const target = () => shelf.current.peek()?.target ?? null
  const pair = (recordingId: string) => logAndRecording(parts, recordingId)
  const decideOn = async (log: BoardLog, now: Target) => {
    const trained = await parts.train()
    return trained.ok ? recogniser.decide(trained.value.model, now, log) : trained
  }
  return {
    calibrate: (squareBlock) => {
      const now = target()
      return now === null ? NO_LIBRARY : calibrate(bench.parts.peek(), now, squareBlock)
    },
    keepCalibration: async (calibration) => {
      const now = target()
      if (now === null) return
      const { calibration: _before, ...rest } = now
      await parts.update({
        target: calibration === null ? rest : { ...rest, calibration: calibration.stored },
      })
    },
    findMounting: async (recordingId) => {
      const both = await pair(recordingId)
      if (!both.ok) return both
      return findMounting(both.value.phone, seriesOfBoard(both.value.log, both.value.target))
    },
    keepMounting: async (mounting) => {
      const now = target()
      if (now !== null) await parts.update({ target: { ...now, mounting } })
    },
    compare: async (recordingId) => {
      const both = await pair(recordingId)
      if (!both.ok) return both
      const { log, target: now, phone } = both.value
      const replay = await parts.replay(recordingId)
      if (!replay.ok) return replay
      const decision = await decideOn(log, now)
      if (!decision.ok) return decision
      return compareDecisions(
        { series: phone, replay: replay.value },
        { series: seriesOfBoard(log, now), decision: decision.value },
      )
    },
    keepLog: async (labels) => {
      const now = target()
      const log = freeLog(bench)
      if (now === null) return NO_LIBRARY
      if (log === null || bench.simulated.peek()) return NO_LOG
      const samples = boardSamples(log, now)
      if (!samples.ok) return samples
      const facts = { fileName: '', hasGyro: log.gyroUnit !== null, fromBoard: true }
      return parts.addLogs([{ ...facts, samples: samples.value }], labels)
    },
    compareLog: async (text) => {
      const now = target()
      const log = freeLog(bench)
      if (now === null) return NO_LIBRARY
      if (log === null) return NO_LOG
      const lines = readEventLines(text)
      if (!lines.ok) return lines
      const decision = await decideOn(log, now)
      return decision.ok ? ok(compareEventLog(decision.value.events, lines.value)) : decision
    },
  }
}

/** The log moved freely and a recording of the phone, as they are compared. */
async function logAndRecording({ shelf, bench }: BesideParts, recordingId: string) {
  const now = shelf.current.peek()?.target ?? null
  if (now === null) return NO_LIBRARY
  const log = freeLog(bench)
  if (log === null) return NO_LOG
  const recording = shelf.recordings.peek().find(({ id }) => id === recordingId)
  const samples = await shelf.store.loadSamples(recordingId)
  if (recording === undefined || samples === null) {
    return fail('board/no-recording', OPEN_LIBRARY.notOfThis)
  }
  return ok({ target: now, log, phone: seriesOf(samples, recording) })
}

function freeLog(bench: BenchState): BoardLog | null {
  return bench.parts.peek().find(({ step }) => step === 'free')?.log ?? null
}

function seriesOf(samples: SampleBlock, { device }: Recording) {
  return seriesOfPhone(samples, device.accelSign)
}
