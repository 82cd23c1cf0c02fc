import { TRY } from '../../shared/words/en/try'
import { useApp } from '../common'
import { GestureRibbon } from '../ribbon'

/** The gestures that can be answered, as pictures with names. */
export function Known() {
  const gestures = useApp().library.current.value?.gestures ?? []
  return (
    <ul class="known-gestures" aria-label={TRY.gestures}>
      {gestures.map((gesture) => (
        <li key={gesture.id}>
          <GestureRibbon gestureId={gesture.id} size={64} />
          <span>{gesture.name}</span>
        </li>
      ))}
    </ul>
  )
}
