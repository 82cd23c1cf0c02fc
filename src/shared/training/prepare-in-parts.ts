import type { FullLibrary, RecordingWithSamples } from '../model/library'
import { ok, type Result } from '../model/result'
import type { Target } from '../model/target'
import type { RunParts } from '../parts/part-jobs'
import { type Conditioned, collectPrepared, type Prepared } from './prepare'

/** Recordings of a part: enough to be worth the way, few enough to spread. */
const A_PART = 64

/**
 * Conditioned recordings by what they were made from, so that measuring again after a further take
 * conditions that take alone. Keeps up to a number of bytes and lets go what was used longest ago.
 */
export class ConditionedCache {
  private readonly kept = new Map<string, Conditioned>()
  private bytes = 0

  constructor(private readonly mostBytes: number) {}

  get size(): number {
    return this.bytes
  }

  get(key: string): Conditioned | undefined {
    const found = this.kept.get(key)
    if (found !== undefined) {
      // Last in a Map's order is what was used last.
      this.kept.delete(key)
      this.kept.set(key, found)
    }
    return found
  }

  set(key: string, value: Conditioned): void {
    this.bytes += value.counts.byteLength - (this.kept.get(key)?.counts.byteLength ?? 0)
    this.kept.delete(key)
    this.kept.set(key, value)
    for (const [oldest, { counts }] of this.kept) {
      if (this.bytes <= this.mostBytes) break
      this.kept.delete(oldest)
      this.bytes -= counts.byteLength
    }
  }
}

/**
 * Everything that conditioning looks at: samples never change under a recording's id, but trim and
 * sign may, and the target's sensor and mounting.
 */
function keyOf({ recording }: RecordingWithSamples, target: string): string {
  const { id, libraryId, sampleCount, durationMs, device, kind } = recording
  const trim = recording.kind === 'take' ? recording.trim : null
  return (
    JSON.stringify([id, libraryId, sampleCount, durationMs, device.accelSign, kind, trim]) + target
  )
}

/** `prepareLibrary` on whatever threads run parts. */
export async function prepareInParts(
  run: RunParts,
  full: FullLibrary,
  cache: ConditionedCache = new ConditionedCache(0),
): Promise<Result<Prepared>> {
  const { target } = full.library
  const facts = targetFacts(target)
  const wanted: RecordingWithSamples[] = []
  const known = new Map<RecordingWithSamples, Conditioned>()
  const empty: Conditioned = { counts: new Int16Array(), from: 0, to: 0 }
  collectPrepared(full, (one) => {
    const found = cache.get(keyOf(one, facts))
    if (found === undefined) wanted.push(one)
    else known.set(one, found)
    return empty
  })
  const parts = Array.from({ length: Math.ceil(wanted.length / A_PART) }, (_, i) =>
    wanted.slice(i * A_PART, (i + 1) * A_PART),
  )
  const made = await run('condition', { target }, parts)
  if (!made.ok) return made
  for (const [i, conditioned] of made.value.flat().entries()) {
    known.set(wanted[i]!, conditioned)
    cache.set(keyOf(wanted[i]!, facts), conditioned)
  }
  return ok(collectPrepared(full, (one) => known.get(one)!))
}

/** What of a target a sensor's reading depends on. */
function targetFacts({ accel, gyro, rateHz, mounting }: Target): string {
  return JSON.stringify([accel, gyro, rateHz, mounting])
}
