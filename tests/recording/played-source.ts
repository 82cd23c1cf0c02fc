import type { MotionFacts, MotionSample, MotionSource } from '../../src/sensors/motion-source'
import { SourceHub } from '../../src/sensors/source-hub'
import { SimulatedHand } from '../../src/shared/demo/simulated-hand'

/** A motion source whose samples the test gives one after another, at 60 Hz from 5 s on. */
export class PlayedSource implements MotionSource {
  readonly kind = 'phone'
  readonly hub = new SourceHub()
  readonly hand = new SimulatedHand(11)
  known: MotionFacts = {
    simulated: false,
    hasGyro: true,
    rateHz: 60,
    accelStepMps2: 0.1,
    gyroStepDps: 0.1,
    accelSign: 1,
  }
  #count = 0

  start = async () => {
    this.hub.setStatus('running')
    return 'running' as const
  }
  stop = () => this.hub.setStatus('stopped')
  status = () => this.hub.status
  facts = () => this.known
  setAccelSign = () => {}
  subscribe = this.hub.subscribe.bind(this.hub)
  onStatus = this.hub.onStatus.bind(this.hub)

  get nowMs(): number {
    return 5000 + (this.#count * 1000) / 60
  }

  /**
   * Plays the hand for a while; pauses after every tenth sample, so that writes and answers of the
   * recogniser come in between as they do in a browser.
   */
  async play(durationMs: number): Promise<void> {
    const samples = Math.round((durationMs * 60) / 1000)
    for (let i = 0; i < samples; i++) {
      this.send()
      if (i % 10 === 9) await settle()
    }
    await settle()
  }

  send(): MotionSample {
    const tMs = this.nowMs
    const sample = { tMs, ...this.hand.sampleAt(tMs) }
    this.#count += 1
    this.hub.emit(sample)
    return sample
  }

  /** Time passes without readings. */
  skip(durationMs: number): void {
    this.#count += Math.round((durationMs * 60) / 1000)
  }
}

/** Lets everything that waits for the database or the recogniser go on. */
export function settle(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 4))
}
