import { StreamConditioner } from '../conditioning/stream-conditioner'
import { CORE_PHASES, type Core, type CorePhase, type TeachAnswer } from '../core/core'
import { encodeModel } from '../format/model-bytes'
import type { AccelSign } from '../model/library'
import type { RecogniserModel } from '../model/recogniser-model'
import { AXES, type SampleBlock } from '../model/sample'
import type { Target } from '../model/target'
import { gestureDistances, templateCount } from '../replay/gesture-distances'

/** Movements of a session. */
export const TEACH_TAKES = 3

/** Rest before a movement that goes along with it, s: enough for gravity and for another cut. */
const LEAD_S = 1.5

/** What teaching made of one movement. */
export interface TeachStep {
  answer: TeachAnswer
  /** To each gesture of the model; null where nothing was compared. */
  gestureDistances: number[] | null
  /** The movement with some rest before it as the board would have read it, n × 6; null if not taken. */
  counts: Int16Array | null
}

export interface TeachUpdate {
  steps: TeachStep[]
  phase: CorePhase
}

/** Teaching on the prop, tried on the phone: the core of the export over a live stream of samples. */
export class TeachRun {
  private readonly core: Core
  private readonly model: RecogniserModel
  private readonly conditioner: StreamConditioner
  private readonly kept: number
  /** The last conditioned samples, n × 6. */
  private last = new Int16Array(0)
  /** Samples since the start, one past the last of `last`. */
  private clock = 0
  private phase: CorePhase = 'idle'

  /** @throws CoreError 'teach/model' for a model with kernel features */
  constructor(core: Core, model: RecogniserModel, target: Target, accelSign: AccelSign) {
    this.core = core
    this.model = model
    this.conditioner = new StreamConditioner(target, accelSign)
    const { maxLength, offHold } = model.segmenter
    this.kept = maxLength + offHold + Math.ceil((LEAD_S * model.board.rateMillihertz) / 1000)
    core.load(encodeModel(model))
    core.openTeaching({ slots: 1, takes: TEACH_TAKES })
  }

  /**
   * Opens a session; what was taught before is forgotten when this one is done.
   * @param gesture index of the one whose place is taken, null for one more
   */
  begin(gesture: number | null): void {
    this.core.openTeaching({ slots: 1, takes: TEACH_TAKES })
    this.core.teach(gesture)
  }

  push(samples: SampleBlock): TeachUpdate {
    const { counts } = this.conditioner.push(samples)
    const steps: TeachStep[] = []
    const trace = { energy: new Uint32Array(1), phase: new Uint8Array(1) }
    for (let at = 0; at < counts.length; at += AXES) {
      const sample = counts.subarray(at, at + AXES)
      this.keep(sample)
      const [event] = this.core.push(sample, trace)
      if (event !== undefined) steps.push(this.step(event.start))
    }
    if (counts.length > 0) this.phase = CORE_PHASES[trace.phase[0]!]!
    return { steps, phase: this.phase }
  }

  private keep(sample: Int16Array): void {
    this.clock += 1
    const before = this.last.subarray(Math.max(0, this.last.length - (this.kept - 1) * AXES))
    const next = new Int16Array(before.length + AXES)
    next.set(before)
    next.set(sample, before.length)
    this.last = next
  }

  private step(start: number): TeachStep {
    const answer = this.core.teachEvent()
    const compared = answer.event.reason !== 'short' && answer.event.reason !== 'long'
    const distances = () =>
      Array.from({ length: templateCount(this.model) }, (_, i) => this.core.templateDistance(i))
    const taken = answer.status !== 'event' && answer.status !== 'cut'
    return {
      answer,
      gestureDistances: compared ? gestureDistances(this.model, distances()) : null,
      counts: taken ? this.since(start) : null,
    }
  }

  /** From some rest before a sample on. */
  private since(start: number): Int16Array {
    const lead = Math.ceil((LEAD_S * this.model.board.rateMillihertz) / 1000)
    const first = this.clock - this.last.length / AXES
    return this.last.slice(Math.max(0, start - lead - first) * AXES)
  }
}
