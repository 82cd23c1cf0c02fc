import { useEffect } from 'preact/hooks'
import { useApp } from '../common'
import { GestureRibbon } from '../ribbon'
import { useShownFor } from './use-shown-for'

const SHOWN_MS = 5000

/** The gesture just recognised, large, for a moment. Rejected movements are left to the light. */
export function AnswerName() {
  const { live, model } = useApp()
  const [shown, show] = useShownFor(SHOWN_MS)
  const newest = live.events.value.find(({ event }) => event.kind === 'gesture')
  useEffect(() => {
    if (newest !== undefined) show()
  }, [newest])
  const job = model.value
  const gesture =
    newest === undefined || job.state !== 'done'
      ? undefined
      : job.value.model.gestures[newest.event.gesture ?? 0]
  if (!shown || gesture === undefined) return null
  return (
    <div class="stage-plate" role="status">
      <div class="stage-picture">
        <GestureRibbon key={newest?.event.start} gestureId={gesture.id} size={96} draw />
      </div>
      <p class="stage-name">{gesture.name}</p>
    </div>
  )
}
