import { RATE_HZ } from './hand-loop'

/** What `feederScript` leaves in the page as `window.soak`. */
export interface Feeder {
  /** Sends so many readings and waits until the workers have answered. */
  feed(count: number): Promise<void>
  /** Workers alive. */
  workers(): number
  /** Holds so much memory for good, to try the meter. */
  leak(bytes: number): void
}

/**
 * Script to run in the page before the app: sends `devicemotion` events with times of their own, so
 * that hours pass in minutes, and counts workers and the messages they have not answered. Between
 * fast stretches a trickle goes on, as a sensor that is silent for a second counts as lost.
 * @param loop six values a reading, played over and over
 */
export function feederScript(loop: Float32Array): string {
  const packed = Buffer.from(loop.buffer, loop.byteOffset, loop.byteLength).toString('base64')
  return `{
    const loop = new Float32Array(Uint8Array.from(atob('${packed}'), (l) => l.charCodeAt(0)).buffer)
    const rows = loop.length / 6
    const open = new Map()
    const change = (worker, by) => {
      if (open.has(worker)) open.set(worker, Math.max(0, open.get(worker) + by))
    }
    window.Worker = class extends Worker {
      constructor(...parts) {
        super(...parts)
        open.set(this, 0)
        this.addEventListener('message', () => change(this, -1))
      }
      postMessage(...parts) {
        change(this, 1)
        super.postMessage(...parts)
      }
      terminate() {
        open.delete(this)
        super.terminate()
      }
    }
    const originMs = performance.now()
    let sent = 0
    const send = () => {
      const row = (sent % rows) * 6
      const [x, y, z, alpha, beta, gamma] = loop.subarray(row, row + 6)
      const event = new Event('devicemotion')
      Object.defineProperties(event, {
        timeStamp: { value: originMs + (sent * 1000) / ${RATE_HZ} },
        accelerationIncludingGravity: { value: { x, y, z } },
        rotationRate: { value: { alpha, beta, gamma } },
      })
      sent += 1
      dispatchEvent(event)
    }
    setInterval(() => { for (let i = 0; i < 6; i++) send() }, 100)
    const kept = []
    const answered = () => ![...open.values()].some((waiting) => waiting > 0)
    window.soak = {
      async feed(count) {
        for (let i = 0; i < count; i++) send()
        do await new Promise((resolve) => setTimeout(resolve))
        while (!answered())
      },
      workers: () => open.size,
      // Numbers with fractions: they lie in the page's own heap, as what an app leaks does.
      leak: (bytes) => kept.push(Array.from({ length: bytes / 8 }, (_, n) => n + 0.5)),
    }
  }`
}
