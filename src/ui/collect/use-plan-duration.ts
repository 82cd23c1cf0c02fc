import { useMemo } from 'preact/hooks'
import { estimateDurationMs } from '../../shared/collect/duration'
import type { Plan } from '../../shared/collect/plan'
import { median } from '../../shared/statistics/summary'
import { useApp } from '../common'

/** Estimated length of one tester's session, ms, by how long the takes are that are here. */
export function usePlanDuration(plan: Plan): number {
  const recordings = useApp().library.recordings.value
  return useMemo(() => {
    const lengths = new Map<string, number[]>()
    for (const one of recordings) {
      if (one.kind !== 'take') continue
      lengths.set(one.gestureId, [...(lengths.get(one.gestureId) ?? []), one.durationMs])
    }
    const typical = [...lengths].map(([id, ms]) => [id, median(ms)] as const)
    return estimateDurationMs(plan, new Map(typical))
  }, [plan, recordings])
}
