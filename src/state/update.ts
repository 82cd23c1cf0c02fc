import { computed, type ReadonlySignal, signal } from '@preact/signals'
import { createUpdater } from '../offline/updater'
import type { UpdateState } from './app'

/** @param busy true while something is recorded or live, when nothing may change under the hand */
export function createUpdate(busy: ReadonlySignal<boolean>): UpdateState {
  const updater = createUpdater({ mayUpdate: () => !busy.peek() })
  const offline = signal(updater.state())
  updater.onState((state) => {
    offline.value = state
  })
  const isPutOff = signal(false)
  return {
    offline,
    offered: computed(() => offline.value === 'update-waiting' && !busy.value && !isPutOff.value),
    apply: () => {
      updater.apply()
    },
    putOff: () => {
      isPutOff.value = true
    },
  }
}
