import type { MotionSource } from '../../sensors/motion-source'
import type { SimulatedSource } from '../../sensors/simulated-source'

/** The simulated phone, when that is the source in use. */
export function asSimulated(source: MotionSource): SimulatedSource | null {
  return source.kind === 'simulated' ? (source as SimulatedSource) : null
}
