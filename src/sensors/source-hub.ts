import type { MotionSample, MotionStatus } from './motion-source'

/** Status and listeners of a motion source; both sources are built around one. */
export class SourceHub {
  #status: MotionStatus = 'stopped'
  readonly #onSample = new Set<(sample: MotionSample) => void>()
  readonly #onStatus = new Set<(status: MotionStatus) => void>()

  get status(): MotionStatus {
    return this.#status
  }

  setStatus(status: MotionStatus): void {
    if (status === this.#status) return
    this.#status = status
    for (const listener of [...this.#onStatus]) listener(status)
  }

  emit(sample: MotionSample): void {
    for (const listener of this.#onSample) listener(sample)
  }

  subscribe(onSample: (sample: MotionSample) => void): () => void {
    return add(this.#onSample, onSample)
  }

  onStatus(onChange: (status: MotionStatus) => void): () => void {
    return add(this.#onStatus, onChange)
  }
}

function add<T>(listeners: Set<T>, listener: T): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}
