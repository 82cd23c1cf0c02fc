import type { ModelSegmenter } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import { CoreBatch, MAX_LENGTH, NO_DISTANCE, seriesLength, toDistance } from './batch'
import {
  CORE_REASONS,
  CORE_ROLLS,
  type Core,
  type CoreCut,
  type CoreDecision,
  type CoreEvent,
  type CoreMemory,
  type CoreTrace,
  type DtwOptions,
  type EnergyStreams,
  type Factors,
  type LeftOut,
  type Shift,
  TEACH_STATUSES,
  type TeachAnswer,
  type TeachSizes,
  type TeachStatus,
} from './core'
import { cutStreams, normaliseSegments } from './segments'
import { checkStatus } from './status'
import { type CoreExports, WasmMemory } from './wasm-memory'

const EVENT_WORDS = 10
const NONE_INDEX = 255
/** MVW_TEACH_NEW */
const TEACH_NEW = 254
/** Bytes of an `mvw_taught`. */
const SLOT_BYTES = 8
const TEACH_WORDS = 6
/** Samples copied into the module at a time. */
const BLOCK_SAMPLES = 1024
/** Decisions that are read from the module at a time. */
const ROOM = 64

/** Sensor as a board has it set up, in the units of `mvw_board`. */
export interface BoardSetup {
  rateMillihertz: number
  accelNgPerLsb: number
  gyroNdpsPerLsb: number
}

/** Wraps an instance of the core's module. Instances share nothing. */
export function createCore(exports: CoreExports): WasmCore {
  return new WasmCore(exports)
}

export class WasmCore implements Core {
  private readonly exports: CoreExports
  private readonly memory: WasmMemory
  private readonly event: number
  private readonly came: number
  private readonly samples: number
  private readonly energy: number
  private readonly phase: number
  private readonly row: number
  private readonly batch: CoreBatch
  /** Everything behind it belongs to the model or to one call. */
  private readonly modelMark: number
  private callMark: number
  private queryValues = 0
  /** Points of a normalised segment. */
  private points = 0
  /** What teaching says goes here; 0 while the core is not being taught. */
  private teachFacts = 0

  constructor(exports: CoreExports) {
    this.exports = exports
    this.memory = new WasmMemory(exports)
    this.event = this.memory.take(EVENT_WORDS * 4)
    this.came = this.memory.take(4)
    this.samples = this.memory.take(BLOCK_SAMPLES * AXES * 2)
    this.energy = this.memory.take(BLOCK_SAMPLES * 4)
    this.phase = this.memory.take(BLOCK_SAMPLES)
    this.row = this.memory.take(MAX_LENGTH * 4)
    this.batch = new CoreBatch(exports, this.memory, this.row)
    this.modelMark = this.memory.mark()
    this.callMark = this.modelMark
  }

  load(modelBytes: Uint8Array, board?: BoardSetup, given?: CoreMemory): void {
    this.memory.release(this.modelMark)
    this.queryValues = 0
    this.teachFacts = 0
    const bytes = this.memory.take(modelBytes.length)
    this.memory.uint8(bytes, modelBytes.length).set(modelBytes)
    const sizes = this.memory.take(16)
    checkStatus(this.exports.read_model(bytes, modelBytes.length, sizes))
    const [ringSamples = 0, queryValues = 0, rowValues = 0, points = 0] = this.memory.uint32(
      sizes,
      4,
    )
    const ring = this.memory.take(ringSamples * AXES * 2)
    const query = this.memory.take(queryValues * 2)
    const row = this.memory.take(rowValues * 4)
    if (given) {
      this.memory.uint32(sizes, 3).set([given.ringSamples, given.queryValues, given.rowValues])
    }
    let setup = 0
    if (board) {
      setup = this.memory.take(12)
      this.memory
        .uint32(setup, 3)
        .set([board.rateMillihertz, board.accelNgPerLsb, board.gyroNdpsPerLsb])
    }
    checkStatus(this.exports.init(ring, query, row, setup, sizes))
    this.queryValues = queryValues
    this.points = points
    this.callMark = this.memory.mark()
  }

  reset(): void {
    this.needModel()
    this.exports.reset()
  }

  push(counts: Int16Array, trace?: CoreTrace): CoreEvent[] {
    this.needModel()
    const total = counts.length / AXES
    if (!Number.isInteger(total)) throw new RangeError('push needs six counts a sample')
    const events: CoreEvent[] = []
    let done = 0
    while (done < total) {
      const block = Math.min(BLOCK_SAMPLES, total - done)
      this.memory
        .int16(this.samples, block * AXES)
        .set(counts.subarray(done * AXES, (done + block) * AXES))
      const taken = checkStatus(
        this.exports.push(
          this.samples,
          block,
          this.came,
          this.event,
          trace ? this.energy : 0,
          trace ? this.phase : 0,
        ),
      )
      if (trace) {
        trace.energy.set(this.memory.uint32(this.energy, taken), done)
        trace.phase.set(this.memory.uint8(this.phase, taken), done)
      }
      if (this.memory.uint32(this.came, 1)[0]) events.push(this.readEvent())
      done += taken
    }
    return events
  }

  pushAll(counts: Int16Array, trace?: CoreTrace): CoreDecision[] {
    this.needModel()
    const total = counts.length / AXES
    if (!Number.isInteger(total)) throw new RangeError('push needs six counts a sample')
    const { memory } = this
    const samples = memory.putInt16(counts)
    const events = memory.take(ROOM * EVENT_WORDS * 4)
    const queries = memory.take(ROOM * this.queryValues)
    const energy = trace ? memory.take(total * 4) : 0
    const phase = trace ? memory.take(total) : 0
    const decisions: CoreDecision[] = []
    for (let done = 0; done < total; ) {
      const taken = this.exports.push_all(
        samples + done * AXES * 2,
        total - done,
        ROOM,
        this.came,
        events,
        queries,
        trace ? energy + done * 4 : 0,
        trace ? phase + done : 0,
      )
      if (taken < 0) memory.release(this.callMark)
      done += checkStatus(taken)
      for (let i = 0; i < memory.uint32(this.came, 1)[0]!; i++) {
        const query = memory.int8(queries + i * this.queryValues, this.queryValues).slice()
        decisions.push({ event: this.readEvent(events + i * EVENT_WORDS * 4), query })
      }
    }
    trace?.energy.set(memory.uint32(energy, total))
    trace?.phase.set(memory.uint8(phase, total))
    memory.release(this.callMark)
    return decisions
  }

  openTeaching({ slots, takes }: TeachSizes): void {
    this.needModel()
    const table = this.memory.take(slots * SLOT_BYTES)
    this.memory.uint8(table, slots * SLOT_BYTES).fill(0)
    const templates = this.memory.take(slots * this.queryValues)
    const segments = this.memory.take(takes * this.queryValues)
    checkStatus(this.exports.teach_open(table, slots, templates, segments, takes))
    this.teachFacts = this.memory.take(TEACH_WORDS * 4)
    this.callMark = this.memory.mark()
  }

  teach(gesture: number | null): number {
    this.needTeaching()
    return checkStatus(this.exports.teach_begin(gesture ?? TEACH_NEW))
  }

  teachEvent(): TeachAnswer {
    this.needTeaching()
    const status = this.exports.teach_event(this.event, this.teachFacts)
    const facts = this.memory.uint32(this.teachFacts, TEACH_WORDS)
    const [, count, nearest, nearestDistance, spread, threshold] = facts
    return {
      status: (TEACH_STATUSES as Record<number, TeachStatus>)[status]!,
      event: this.readEvent(),
      count: count!,
      nearest: toIndex(nearest!),
      nearestDistance: toDistance(nearestDistance!),
      spread: spread!,
      threshold: threshold!,
    }
  }

  cancelTeaching(): void {
    this.needTeaching()
    this.exports.teach_cancel()
  }

  forget(gesture: number): void {
    this.needTeaching()
    checkStatus(this.exports.teach_forget(gesture))
  }

  button(pressed: boolean): void {
    this.needModel()
    checkStatus(this.exports.button(pressed ? 1 : 0))
  }

  classify(counts: Int16Array, gravity: Int16Array | null): CoreEvent {
    this.needModel()
    const at = this.memory.take(counts.length * 2)
    this.memory.int16(at, counts.length).set(counts)
    let down = 0
    if (gravity) {
      down = this.memory.take(6)
      this.memory.int16(down, 3).set(gravity)
    }
    const status = this.exports.classify(at, counts.length / AXES, down, this.event)
    this.memory.release(this.callMark)
    checkStatus(status)
    return this.readEvent()
  }

  cut(streams: EnergyStreams, segmenter: ModelSegmenter, phases?: Uint8Array): CoreCut[][] {
    return cutStreams(this.exports, this.memory, streams, segmenter, phases)
  }

  normalise(segments: readonly { counts: Int16Array; gravity: Int16Array | null }[]): Int8Array[] {
    this.needModel()
    return normaliseSegments(this.exports, this.memory, segments, this.queryValues)
  }

  query(): Int8Array {
    this.needModel()
    return this.memory.int8(this.exports.query(), this.queryValues).slice()
  }

  templateDistance(templateIndex: number): number {
    this.needModel()
    return toDistance(this.exports.template_distance(templateIndex)) ?? Number.POSITIVE_INFINITY
  }

  dtw(a: Int8Array, b: Int8Array, options: DtwOptions): number {
    const { channels, band, cost, limit = NO_DISTANCE } = options
    const mark = this.memory.mark()
    const [first, second] = [this.memory.putInt8(a), this.memory.putInt8(b)]
    const distance = this.exports.dtw(
      first,
      seriesLength(a, channels),
      second,
      seriesLength(b, channels),
      channels,
      band,
      cost,
      limit,
      this.row,
    )
    this.memory.release(mark)
    return toDistance(distance) ?? Number.POSITIVE_INFINITY
  }

  dtwMatrix(rows: Int8Array[], columns: Int8Array[], options: DtwOptions): Float64Array {
    return this.batch.matrix(rows, columns, options)
  }

  distances(series: readonly Int8Array[], options: DtwOptions): Float64Array {
    return this.batch.distances(series, options)
  }

  kernelCounts(queries: readonly Int8Array[], records: Uint8Array): Uint8Array {
    this.needModel()
    return this.batch.kernelCounts(queries, records, this.queryValues, this.points)
  }

  gram(values: Float32Array, rows: number): Float64Array {
    return this.batch.gram(values, rows)
  }

  product(a: Factors, rows: number, b: Factors, columns: number): Float64Array {
    return this.batch.product(a, rows, b, columns)
  }

  leaveOut(
    matrix: Float64Array,
    shift: Shift,
    targets: Float64Array,
    columns: number,
    sizes: readonly number[],
  ): LeftOut {
    return this.batch.leaveOut(matrix, shift, targets, columns, sizes)
  }

  kernelOutputs(queries: readonly Int8Array[], record: Uint8Array): Int32Array {
    this.needModel()
    const mark = this.memory.mark()
    const packed = this.memory.putAll(queries, this.queryValues)
    const feature = this.memory.putBytes(record)
    const total = queries.length * this.points
    const out = this.memory.take(total * 4)
    this.exports.kernel_outputs(packed, queries.length, feature, out)
    const outputs = new Int32Array(this.memory.uint32(out, total).slice().buffer)
    this.memory.release(mark)
    return outputs
  }

  private needTeaching(): void {
    if (this.teachFacts === 0) throw new Error('open teaching on a loaded model first')
  }

  private readEvent(at = this.event): CoreEvent {
    const word = this.memory.uint32(at, EVENT_WORDS)
    const [kind, reason, roll, gesture, runnerUp, start, end, distance, threshold, second] = word
    return {
      kind: kind === 1 ? 'gesture' : 'reject',
      reason: CORE_REASONS[reason!]!,
      roll: CORE_ROLLS[roll!]!,
      gesture: toIndex(gesture!),
      runnerUp: toIndex(runnerUp!),
      start: start!,
      end: end!,
      distance: toDistance(distance!),
      threshold: threshold!,
      runnerUpDistance: toDistance(second!),
    }
  }

  private needModel(): void {
    if (this.queryValues === 0) throw new Error('load a model into the core first')
  }
}

function toIndex(value: number): number | null {
  return value === NONE_INDEX ? null : value
}
