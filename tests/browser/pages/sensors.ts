import { signFromLyingFlat } from '../../../src/sensors/accel-sign'
import type { MotionSample, MotionSource } from '../../../src/sensors/motion-source'
import { createPhoneSource } from '../../../src/sensors/phone-source'

declare global {
  interface Window {
    source: MotionSource
    samples: MotionSample[]
    statuses: string[]
    /** Answer of the lay-flat step from the last 90 samples. */
    layFlat: () => ReturnType<typeof signFromLyingFlat>
  }
}

window.source = createPhoneSource()
window.samples = []
window.statuses = []
window.source.subscribe((sample) => window.samples.push(sample))
window.source.onStatus((status) => window.statuses.push(status))
window.layFlat = () => signFromLyingFlat(window.samples.slice(-90))
document.querySelector('#start')?.addEventListener('click', () => void window.source.start())
