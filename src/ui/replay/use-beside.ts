import { useEffect, useState } from 'preact/hooks'
import type { Recording, Take } from '../../shared/model/library'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import type { Replay } from '../../shared/model/replay'
import type { NearestWarping } from '../../shared/replay/unroll'
import { REPLAY_TRACES } from '../../shared/words/en/replay-traces'
import { useApp } from '../common'
import type { Beside } from './lanes-of'

export interface BesideChoice {
  /** Id of the take; '' for nothing. */
  id: string
  text: string
}

/** Most takes offered beside one; more would be a list to get lost in. */
const MOST_OFFERED = 30

/**
 * What can be shown behind a take: the take of the template it was nearest to, and other takes of
 * its gesture.
 */
export function choicesBeside(
  recording: Recording,
  recordings: readonly Recording[],
  nearest: { gesture: number; warping: NearestWarping } | null,
  model: RecogniserModel,
): BesideChoice[] {
  const choices: BesideChoice[] = [{ id: '', text: REPLAY_TRACES.choices.nothing }]
  const gesture = model.gestures[nearest?.gesture ?? -1]
  const templateId = gesture?.templateTakeIds[nearest?.warping.template ?? -1] ?? ''
  const template = recordings.find((one) => one.id === templateId)
  if (template !== undefined && gesture !== undefined && templateId !== recording.id) {
    choices.push({
      id: templateId,
      text: REPLAY_TRACES.choices.nearest(gesture.name, template.testerCode),
    })
  }
  if (recording.kind !== 'take') return choices
  const others = recordings.filter(
    (one): one is Take =>
      one.kind === 'take' &&
      one.gestureId === recording.gestureId &&
      one.id !== recording.id &&
      one.id !== templateId,
  )
  const counts = new Map<string, number>()
  for (const { id, testerCode } of others.slice(0, MOST_OFFERED)) {
    const count = (counts.get(testerCode) ?? 0) + 1
    counts.set(testerCode, count)
    choices.push({ id, text: REPLAY_TRACES.choices.take(count, testerCode) })
  }
  return choices
}

/**
 * The replay of another recording, its movement laid where this one's begins.
 * @param start first sample of the movement it is laid to
 */
export function useBeside(id: string, start: number): Beside | null {
  const app = useApp()
  const [found, setFound] = useState<{ id: string; replay: Replay } | null>(null)
  useEffect(() => {
    if (id === '') return
    let wanted = true
    void app.replay(id).then((replayed) => {
      if (wanted && replayed.ok) setFound({ id, replay: replayed.value })
    })
    return () => {
      wanted = false
    }
  }, [app, id])
  if (found === null || found.id !== id) return null
  return { replay: found.replay, shift: start - longestStart(found.replay) }
}

function longestStart({ events }: Replay): number {
  const [longest] = [...events].sort((a, b) => b.end - b.start - (a.end - a.start))
  return longest?.start ?? 0
}
