import type { MotionFacts } from './motion-source'
import { RateMeter } from './rate'
import type { Reading } from './reading'
import { RoundingMeter } from './rounding'

/** What the readings themselves tell about the sensor. */
export class MotionMeter {
  readonly #rate = new RateMeter()
  readonly #accel = new RoundingMeter()
  readonly #gyro = new RoundingMeter()
  #hasGyro = false

  add({ sample, hasGyro }: Reading): void {
    this.#rate.add(sample.tMs)
    for (const value of [sample.ax, sample.ay, sample.az]) this.#accel.add(value)
    if (!hasGyro) return
    this.#hasGyro = true
    for (const value of [sample.gx, sample.gy, sample.gz]) this.#gyro.add(value)
  }

  facts(): Omit<MotionFacts, 'simulated' | 'accelSign'> {
    return {
      hasGyro: this.#hasGyro,
      rateHz: this.#rate.rateHz(),
      accelStepMps2: this.#accel.step(),
      gyroStepDps: this.#gyro.step(),
    }
  }
}
