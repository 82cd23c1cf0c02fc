import { StreamConditioner } from '../../src/shared/conditioning/stream-conditioner'
import { CORE_PHASES, type Core, type CoreEvent, type CorePhase } from '../../src/shared/core/core'
import { encodeModel } from '../../src/shared/format/model-bytes'
import type { AccelSign } from '../../src/shared/model/library'
import type { RecogniserModel } from '../../src/shared/model/recogniser-model'
import { AXES, type SampleBlock } from '../../src/shared/model/sample'
import type { Target } from '../../src/shared/model/target'
import type { ButtonChange, LiveEvent, LiveUpdate } from '../../src/shared/protocol/recogniser'
import { gestureDistances, templateCount } from '../../src/shared/replay/gesture-distances'
import { cuttingModel } from '../../src/shared/training/cutting-model'

/** Live recognition: samples of the phone in, what the board would have answered out. */
export class LiveRun {
  private readonly core: Core
  private readonly model: RecogniserModel
  private readonly knowsGestures: boolean
  private readonly conditioner: StreamConditioner
  private phase: CorePhase = 'idle'
  /** Conditioned samples so far. */
  private samples = 0
  /** Changes of the button whose sample has not come out of the conditioning yet. */
  private readonly buttons: ButtonChange[] = []

  /** model null: movements are cut with the target's default segmenter and not named. */
  constructor(core: Core, model: RecogniserModel | null, target: Target, accelSign: AccelSign) {
    this.core = core
    this.knowsGestures = model !== null
    this.model = model ?? cuttingModel(target)
    this.conditioner = new StreamConditioner(target, accelSign)
    core.load(encodeModel(this.model))
  }

  push(samples: SampleBlock, buttons: readonly ButtonChange[] = []): LiveUpdate {
    this.buttons.push(...buttons)
    const { counts } = this.conditioner.push(samples)
    const count = counts.length / AXES
    const energy = new Uint32Array(count)
    const phase = new Uint8Array(count)
    const events: LiveEvent[] = []
    const decidedMs = samples.tMs.at(-1) ?? 0
    // Sample by sample: distances belong to the segment that has just been compared.
    for (let i = 0; i < count; i++) {
      this.press(this.conditioner.timeOfMs(this.samples++))
      const one = { energy: energy.subarray(i, i + 1), phase: phase.subarray(i, i + 1) }
      for (const event of this.core.push(counts.subarray(i * AXES, (i + 1) * AXES), one))
        events.push(this.describe(event, decidedMs))
    }
    if (count > 0) this.phase = CORE_PHASES[phase[count - 1]!]!
    return { events, energy, phase: this.phase }
  }

  /** Tells the core of what happened to the button by a time. */
  private press(nowMs: number): void {
    while (this.buttons[0] !== undefined && this.buttons[0].tMs <= nowMs) {
      this.core.button(this.buttons.shift()!.down)
    }
  }

  private describe(event: CoreEvent, decidedMs: number): LiveEvent {
    const compared = this.knowsGestures && event.gesture !== null
    const distances = () =>
      Array.from({ length: templateCount(this.model) }, (_, i) => this.core.templateDistance(i))
    return {
      event,
      gestureDistances: compared ? gestureDistances(this.model, distances()) : null,
      startMs: this.conditioner.timeOfMs(event.start),
      // The segment's end is one past its last sample.
      endMs: this.conditioner.timeOfMs(event.end - 1),
      decidedMs,
    }
  }
}
