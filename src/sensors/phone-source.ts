import type { AccelSign } from '../shared/model/library'
import { MotionMeter } from './motion-meter'
import type { MotionFacts, MotionSource, MotionStatus } from './motion-source'
import { OrientationCheck } from './orientation-check'
import { browserEnvironment, type PhoneEnvironment } from './phone-environment'
import { type MotionEventLike, toReading } from './reading'
import { SourceHub } from './source-hub'
import { SteadyClock } from './steady-clock'

/** A sensor that sent nothing for so long is not there, or gone. */
const SILENCE_MS = 1000
const WATCH_EVERY_MS = 200

/**
 * The phone's own sensors through `devicemotion`. Handlers are kept tiny: while the main thread is
 * blocked, browsers drop readings instead of queueing them.
 */
export function createPhoneSource(environment = browserEnvironment()): MotionSource {
  return new PhoneSource(environment)
}

class PhoneSource implements MotionSource {
  readonly kind = 'phone'
  readonly #env: PhoneEnvironment
  readonly #hub = new SourceHub()
  #meter = new MotionMeter()
  #orientation = new OrientationCheck()
  #sign: AccelSign = 0
  #clock = new SteadyClock()
  #lastMs = Number.NEGATIVE_INFINITY
  #quietSinceMs = 0
  #watch: ReturnType<typeof setInterval> | null = null
  #starting: Promise<MotionStatus> | null = null
  #settle: ((status: MotionStatus) => void) | null = null

  constructor(env: PhoneEnvironment) {
    this.#env = env
  }

  start(): Promise<MotionStatus> {
    if (this.#hub.status === 'running') return Promise.resolve('running')
    this.#starting ??= this.#start().finally(() => {
      this.#starting = null
    })
    return this.#starting
  }

  stop(): void {
    this.#unlisten()
    this.#become('stopped')
  }

  status(): MotionStatus {
    return this.#hub.status
  }

  facts(): MotionFacts {
    return { ...this.#meter.facts(), simulated: false, accelSign: this.#sign }
  }

  setAccelSign(sign: AccelSign): void {
    this.#sign = sign
  }

  subscribe: MotionSource['subscribe'] = (onSample) => this.#hub.subscribe(onSample)
  onStatus: MotionSource['onStatus'] = (onChange) => this.#hub.onStatus(onChange)

  /** The permission is asked first and without a pause: it needs the tap that brought us here. */
  async #start(): Promise<MotionStatus> {
    this.#unlisten()
    if (!this.#env.secure) return this.#become('insecure')
    if (this.#env.motionEvents === undefined) return this.#become('no-sensor')
    this.#hub.setStatus('starting')
    if (!(await this.#permitted())) return this.#become('denied')
    if (this.#hub.status !== 'starting') return this.#hub.status
    const settled = new Promise<MotionStatus>((resolve) => {
      this.#settle = resolve
    })
    this.#listen()
    return settled
  }

  /** Anything but 'granted' is a no; 'prompt' comes from browsers that did not ask. */
  async #permitted(): Promise<boolean> {
    const request = this.#env.motionEvents?.requestPermission
    if (request === undefined) return true
    try {
      return (await request.call(this.#env.motionEvents)) === 'granted'
    } catch {
      return false
    }
  }

  #become(status: MotionStatus): MotionStatus {
    this.#hub.setStatus(status)
    this.#settle?.(status)
    this.#settle = null
    return status
  }

  #listen(): void {
    this.#meter = new MotionMeter()
    this.#orientation = new OrientationCheck()
    this.#clock = new SteadyClock()
    this.#lastMs = Number.NEGATIVE_INFINITY
    this.#quietSinceMs = this.#env.nowMs()
    this.#env.window.addEventListener('devicemotion', this.#onMotion)
    this.#env.window.addEventListener('deviceorientation', this.#onOrientation)
    this.#env.document.addEventListener('visibilitychange', this.#onVisibility)
    this.#watch = setInterval(this.#onWatch, WATCH_EVERY_MS)
  }

  #unlisten(): void {
    this.#env.window.removeEventListener('devicemotion', this.#onMotion)
    this.#env.window.removeEventListener('deviceorientation', this.#onOrientation)
    this.#env.document.removeEventListener('visibilitychange', this.#onVisibility)
    if (this.#watch !== null) clearInterval(this.#watch)
    this.#watch = null
  }

  readonly #onMotion = (event: Event): void => {
    const reading = toReading(event as unknown as MotionEventLike)
    if (reading === null) return
    const { sample } = reading
    sample.tMs = this.#clock.timeOf(sample.tMs, this.#env.nowMs())
    if (sample.tMs < this.#lastMs) return
    this.#lastMs = sample.tMs
    this.#quietSinceMs = this.#env.nowMs()
    this.#meter.add(reading)
    if (this.#sign === 0) this.#sign = this.#orientation.addSample(sample)
    if (this.#hub.status !== 'running') this.#become('running')
    this.#hub.emit(sample)
  }

  readonly #onOrientation = (event: Event): void => {
    const { timeStamp, beta, gamma } = event as DeviceOrientationEvent
    this.#orientation.addAngles(timeStamp, beta, gamma)
  }

  /** A hidden page gets no readings, so what runs is over at once and not after a second. */
  readonly #onVisibility = (): void => {
    const hidden = this.#env.document.visibilityState === 'hidden'
    if (hidden && this.#hub.status === 'running') this.#become('lost')
    if (!hidden) this.#quietSinceMs = this.#env.nowMs()
  }

  /** Listening goes on after silence: a sensor that comes back is taken up again. */
  readonly #onWatch = (): void => {
    if (this.#env.nowMs() - this.#quietSinceMs <= SILENCE_MS) return
    if (this.#hub.status === 'starting') this.#become('no-sensor')
    if (this.#hub.status === 'running') this.#become('lost')
  }
}
