import { useEffect, useState } from 'preact/hooks'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import type { Replay } from '../../shared/model/replay'
import type { NearestWarping } from '../../shared/replay/unroll'
import { useApp } from '../common'

type Warpings = (NearestWarping | null)[]

/** How one movement of a replay lies against each gesture's nearest template; null until known. */
export function useUnrolled(
  replay: Replay,
  model: RecogniserModel,
  index: number,
): Warpings | null {
  const app = useApp()
  const [known, setKnown] = useState<ReadonlyMap<number, Warpings>>(new Map())
  const query = replay.queries[index] ?? null
  useEffect(() => setKnown(new Map()), [replay, model])
  useEffect(() => {
    if (query === null) return
    let wanted = true
    void app.unroll(model, query).then((unrolled) => {
      if (wanted && unrolled.ok) setKnown((before) => new Map(before).set(index, unrolled.value))
    })
    return () => {
      wanted = false
    }
  }, [app, model, query, index])
  return known.get(index) ?? null
}
