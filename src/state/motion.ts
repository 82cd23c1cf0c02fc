import { effect, signal } from '@preact/signals'
import { signFromLyingFlat } from '../sensors/accel-sign'
import type { MotionSample, MotionSource } from '../sensors/motion-source'
import type { MotionState } from './app'
import { prefer, preferences } from './preferences'

/** Facts move slowly; readings do not wait for them. */
const FACTS_EVERY_MS = 500
/** Samples of rest that the lay-flat step looks at. */
const LYING_FLAT_MS = 1300

export interface MotionParts {
  phone: MotionSource
  simulated: MotionSource
}

/** The motion source in use, with its status and facts as signals. */
export function createMotion(parts: MotionParts): MotionState {
  const kind = signal<MotionSource['kind']>('phone')
  const source = () => parts[kind.peek()]
  parts.phone.setAccelSign(preferences.peek().accelSign)
  const status = signal(source().status())
  const facts = signal(source().facts())

  const refresh = () => {
    status.value = source().status()
    facts.value = source().facts()
    const { accelSign, simulated } = facts.value
    if (!simulated && accelSign !== preferences.peek().accelSign) prefer({ accelSign })
  }
  for (const part of [parts.phone, parts.simulated]) {
    part.onStatus(() => {
      if (part === source()) refresh()
    })
  }
  effect(() => {
    if (status.value !== 'running') return
    const timer = setInterval(refresh, FACTS_EVERY_MS)
    return () => clearInterval(timer)
  })

  return {
    kind,
    status,
    facts,
    source,
    use(next) {
      if (next === kind.peek()) return
      source().stop()
      kind.value = next
      refresh()
    },
    async start() {
      const reached = await source().start()
      refresh()
      return reached
    },
    async findSign() {
      const found = signFromLyingFlat(await collect(source(), LYING_FLAT_MS))
      if (found.ok) source().setAccelSign(found.value)
      refresh()
      return found
    },
  }
}

/** Samples of the next `durationMs`. */
function collect(source: MotionSource, durationMs: number): Promise<MotionSample[]> {
  const samples: MotionSample[] = []
  const unsubscribe = source.subscribe((sample) => samples.push(sample))
  return new Promise((resolve) => {
    setTimeout(() => {
      unsubscribe()
      resolve(samples)
    }, durationMs)
  })
}
