import type { RecogniserClient } from '../../recogniser/client'
import type { QualityWord } from '../../recording/types'
import type { Take } from '../../shared/model/library'
import { AXES, type SampleBlock } from '../../shared/model/sample'
import type { Target } from '../../shared/model/target'
import { SESSION_TROUBLE } from '../../shared/words/en/session-trouble'

/** Stillness behind the take, so that the segmenter ends a movement which the take ends in, ms. */
const STILL_MS = 1000
const STILL_STEP_MS = 20

/**
 * Whether the core's segmenter would cut the take in two: a prop would then answer twice, or to neither
 * half. Null when all is well or the worker cannot say.
 */
export async function judgeCut(
  client: Pick<RecogniserClient, 'openLive' | 'pushLive' | 'closeLive'>,
  take: Take,
  samples: SampleBlock,
  target: Target,
): Promise<QualityWord | null> {
  const opened = await client.openLive(null, target, take.device.accelSign)
  if (!opened.ok) return null
  const seen = await client.pushLive(withStillness(samples))
  await client.closeLive()
  if (!seen.ok) return null
  const cuts = seen.value.events.filter(({ event }) => event.reason === 'far').length
  if (cuts < 2) return null
  return {
    code: 'cut-in-two',
    text: SESSION_TROUBLE.cutInTwo(cuts),
  }
}

/** The last sample held on. */
function withStillness({ tMs, values }: SampleBlock): SampleBlock {
  const count = tMs.length
  if (count === 0) return { tMs, values }
  const more = STILL_MS / STILL_STEP_MS
  const heldMs = new Float64Array(count + more)
  const held = new Float32Array((count + more) * AXES)
  heldMs.set(tMs)
  held.set(values)
  const last = values.subarray((count - 1) * AXES)
  for (let n = 0; n < more; n++) {
    heldMs[count + n] = tMs[count - 1]! + (n + 1) * STILL_STEP_MS
    held.set(last, (count + n) * AXES)
    // Held turning is no stillness: the gyroscope reads nothing there.
    held.fill(0, (count + n) * AXES + 3, (count + n + 1) * AXES)
  }
  return { tMs: heldMs, values: held }
}
