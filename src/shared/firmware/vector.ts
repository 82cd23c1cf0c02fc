import {
  type Core,
  CoreError,
  type CoreEvent,
  type CoreMemory,
  type TeachAnswer,
} from '../core/core'
import type { ModelBoard } from '../model/recogniser-model'
import { AXES } from '../model/sample'

export type VectorStep =
  /** n × 6 counts. */
  | { samples: Int16Array }
  | { button: boolean }
  | { reset: true }
  /** Opens a teaching session: index of the gesture whose place is taken, null for one more. */
  | { teach: number | null }
  /** Number of a taught gesture. */
  | { forget: number }
  /** Model bytes for `mvw_model_read()` alone; at most 256, and before all other steps. */
  | { read: Uint8Array }

/** What goes into the recogniser, and why. */
export interface VectorInput {
  /** Words parted by '-'; a file name. */
  name: string
  /** One sentence: what this vector shows. */
  why: string
  /** How it was made: from which take, or by which rule. */
  from: string
  /** The board's setting, when it is not the model's. */
  board?: ModelBoard
  /** Version the model claims, when it is not its own. */
  version?: number
  /** Entries of the buffers given, when they are not what the model needs. */
  memory?: CoreMemory
  steps: VectorStep[]
}

/** An input with the event log that every build of the core must give. */
export interface Vector extends VectorInput {
  log: string
}

/** One `event` line of an event log (FORMAT.md, "Event log"), without line end. */
export function eventLine(event: CoreEvent): string {
  const orDash = (value: number | null) => (value === null ? '-' : String(value))
  return [
    'event',
    event.start,
    event.end,
    event.kind,
    orDash(event.gesture),
    event.reason,
    event.roll,
    orDash(event.distance),
    event.threshold,
    orDash(event.runnerUp),
    orDash(event.runnerUpDistance),
  ].join(' ')
}

/**
 * The event log of a vector, made by the core that runs on the phone.
 * @throws what the core throws, except the status of a model that is refused: that is in the log
 */
export function runVector(core: Core, modelBytes: Uint8Array, input: VectorInput): string {
  const reads = input.steps.flatMap((step) => ('read' in step ? [step.read] : []))
  const lines = reads.map((bytes) => `read ${statusOf(() => core.load(bytes))}`)
  const status = statusOf(() =>
    core.load(withVersion(modelBytes, input.version), input.board, input.memory),
  )
  lines.push(`init ${status}`)
  let samples = 0
  let teaching = false
  for (const step of status === 0 ? input.steps : []) {
    if ('reset' in step) {
      core.reset()
      samples = 0
    } else if ('button' in step) {
      core.button(step.button)
    } else if ('teach' in step || 'forget' in step) {
      lines.push(teachLine(core, step, teaching))
      teaching = true
    } else if ('samples' in step) {
      lines.push(
        ...(teaching ? taughtLines(core, step.samples) : core.push(step.samples).map(eventLine)),
      )
      samples += step.samples.length / AXES
    }
  }
  lines.push(`end ${samples}`)
  return `${lines.join('\n')}\n`
}

/** Movements a vector is taught with and gestures it may teach, as in `vector_run.h`. */
const TEACH_SIZES = { slots: 2, takes: 3 }
/** MVW_TEACH_NEW */
const TEACH_NEW = 254

/** @param open whether teaching was opened before in this vector */
function teachLine(
  core: Core,
  step: { teach: number | null } | { forget: number },
  open: boolean,
): string {
  let answer = 0
  const status = statusOf(() => {
    if (!open) core.openTeaching(TEACH_SIZES)
    if ('teach' in step) answer = core.teach(step.teach)
    else core.forget(step.forget)
  })
  return `${'teach' in step ? 'teach' : 'forget'} ${status < 0 ? status : answer}`
}

/** Sample by sample, as teaching takes an event before the next can come. */
function taughtLines(core: Core, counts: Int16Array): string[] {
  const lines: string[] = []
  for (const sample of rowsOf(counts)) {
    if (core.push(sample).length === 0) continue
    const answer = core.teachEvent()
    lines.push(answer.status === 'event' ? eventLine(answer.event) : taughtLine(answer))
  }
  return lines
}

function taughtLine(answer: TeachAnswer): string {
  const { status, count, nearest, nearestDistance, spread, threshold } = answer
  return `taught ${status} ${count} ${nearest ?? '-'} ${nearestDistance ?? '-'} ${spread} ${threshold}`
}

/** 0, or the status with which the core refuses. */
function statusOf(load: () => void): number {
  try {
    load()
    return 0
  } catch (error) {
    if (error instanceof CoreError) return error.status
    throw error
  }
}

/** The same model under another version number, which stands in bytes 4 and 5. */
function withVersion(modelBytes: Uint8Array, version: number | undefined): Uint8Array {
  if (version === undefined) return modelBytes
  const bytes = modelBytes.slice()
  bytes[4] = version & 0xff
  bytes[5] = version >> 8
  return bytes
}

/** Text of a vector's input (FORMAT.md, "Vectors"). */
export function vectorText(input: VectorInput): string {
  const lines = [`# ${input.why}`]
  const { board, memory } = input
  if (board) {
    lines.push(`board ${board.rateMillihertz} ${board.accelNgPerLsb} ${board.gyroNdpsPerLsb}`)
  }
  if (input.version !== undefined) lines.push(`version ${input.version}`)
  if (memory) {
    lines.push(`memory ${memory.ringSamples} ${memory.queryValues} ${memory.rowValues}`)
  }
  for (const step of input.steps) {
    if ('reset' in step) lines.push('reset')
    else if ('teach' in step) lines.push(`teach ${step.teach ?? TEACH_NEW}`)
    else if ('forget' in step) lines.push(`forget ${step.forget}`)
    else if ('button' in step) lines.push(`button ${step.button ? 1 : 0}`)
    else if ('read' in step) lines.push(...byteLines(step.read), 'read')
    else for (const row of rowsOf(step.samples)) lines.push(row.join(' '))
  }
  return `${lines.join('\n')}\n`
}

/** Bytes of a `bytes` line, so that it stays within the 127 characters a board takes. */
const BYTES_A_LINE = 32

function byteLines(bytes: Uint8Array): string[] {
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0'))
  const lines: string[] = []
  for (let at = 0; at < hex.length; at += BYTES_A_LINE) {
    lines.push(`bytes ${hex.slice(at, at + BYTES_A_LINE).join('')}`)
  }
  return lines
}

function* rowsOf(counts: Int16Array): Generator<Int16Array> {
  for (let at = 0; at < counts.length; at += AXES) yield counts.subarray(at, at + AXES)
}

/** Number of a vector in file names: 01, 02, ... */
export function vectorNumber(index: number): string {
  return String(index + 1).padStart(2, '0')
}
