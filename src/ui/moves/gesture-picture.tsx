import type { Gesture } from '../../shared/model/library'
import { GestureRibbon } from '../ribbon'

/** The ribbon of a gesture, or an empty field while it has no takes. */
export function GesturePicture({ gesture }: { gesture: Gesture }) {
  return (
    <div class="gesture-picture">
      <GestureRibbon gestureId={gesture.id} size={144} label={`Ribbon of ${gesture.name}`} draw />
    </div>
  )
}
