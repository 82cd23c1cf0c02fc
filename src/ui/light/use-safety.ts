import { useEffect, useState } from 'preact/hooks'
import type { LightOwner } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { checkAnswer, lightFindings, type SafetyFinding } from '../../shared/light/safety'

/** After the last change, so that a slider stays quick under the thumb. */
const SETTLED_MS = 250

function useSettled<T>(compute: () => T | null, inputs: unknown[]): T | null {
  const [value, setValue] = useState<T | null>(null)
  useEffect(() => {
    const timer = setTimeout(() => setValue(compute()), SETTLED_MS)
    return () => clearTimeout(timer)
    // The inputs are what `compute` reads.
  }, inputs)
  return value
}

/** What the safety check says of one answer; null until it was looked at. */
export function useAnswerSafety(
  player: LightPlayer | null,
  library: LightOwner,
  key: string,
): SafetyFinding[] | null {
  return useSettled(() => player && checkAnswer(player, library, key), [player, library, key])
}

/** Everything over a limit in the whole library, a sentence each; null until it was looked at. */
export function useLibrarySafety(player: LightPlayer | null, library: LightOwner): string[] | null {
  return useSettled(() => player && lightFindings(player, library), [player, library])
}
