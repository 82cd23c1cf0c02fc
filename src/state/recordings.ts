import { judgeTake } from '../recording/quality'
import type { Recording, Take } from '../shared/model/library'
import { fail, ok } from '../shared/model/result'
import { NOTICES } from '../shared/words/en/notices'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { LibraryState } from './app'
import { newId } from './id'
import { describeLog } from './logs'
import type { Shelf } from './shelf'

type Recordings = Pick<
  LibraryState,
  'relabel' | 'trim' | 'updateFacts' | 'removeRecordings' | 'samples' | 'quality' | 'addLogs'
>

/** Fetched with the first change: the start does without it. */
const loadHistory = () => import('../shared/collect/history')

const loadLeave = async () => ({
  ...(await import('../shared/collect/withdraw')),
  ...(await import('./leave')),
})

/** Acts on the recordings of the current library. Samples are never changed. */
export function createRecordings(shelf: Shelf): Recordings {
  const { store, notices } = shelf
  const find = (id: string) => shelf.recordings.value.find((one) => one.id === id)
  const takes = (id: string): Take | null => {
    const found = find(id)
    return found?.kind === 'take' ? found : null
  }
  const change = async (recording: Recording) => {
    const before = find(recording.id) ?? recording
    // Copies elsewhere may be changed too: when they meet, each change must still be known.
    const { changeLabels, labelsOf } = await loadHistory()
    const at = new Date().toISOString()
    const changed = changeLabels(before, labelsOf(recording), at, newId)
    const done = shelf.check(await store.updateRecording(changed))
    await shelf.reloadRecordings()
    return done
  }

  return {
    async relabel(takeId, gestureId) {
      const take = takes(takeId)
      if (take === null || take.gestureId === gestureId) return
      if (!(await change({ ...take, gestureId }))) return
      const name = shelf.current.value?.gestures.find((one) => one.id === gestureId)?.name ?? ''
      notices.say(NOTICES.takeMoved(name), async () => {
        const now = takes(takeId) ?? take
        return change({ ...now, gestureId: take.gestureId })
      })
    },
    async trim(takeId, trim) {
      const take = takes(takeId)
      if (take !== null) await change({ ...take, trim })
    },
    async updateFacts(id, facts) {
      const recording = find(id)
      if (recording !== undefined) await change({ ...recording, ...facts })
    },
    async removeRecordings(ids) {
      const library = shelf.current.value
      if (ids.length === 0 || library === null) return
      // Those that came home in a file must not come back with it.
      const { dropTakes, leaveTogether } = await loadLeave()
      await leaveTogether(
        shelf,
        library.id,
        (now, own, at) => dropTakes(now, own, ids, at),
        NOTICES.recordingsDeleted(ids.length),
      )
    },
    samples: (id) => store.loadSamples(id),
    async quality(takeId) {
      const take = takes(takeId)
      const samples = await store.loadSamples(takeId)
      const target = shelf.current.value?.target
      if (take === null || samples === null || target === undefined) return []
      return judgeTake(samples, take.device, target)
    },
    async addLogs(logs, as) {
      const library = shelf.current.value
      if (library === null) return fail('log/no-library', OPEN_LIBRARY.noneOpen)
      const items = logs.map((log) => describeLog(log, as, library.id, newId()))
      const stored = await store.addRecordings(items)
      if (!stored.ok) return stored
      await shelf.reloadRecordings()
      await shelf.askToKeep()
      notices.say(NOTICES.recordingsAdded(items.length))
      return ok(null)
    },
  }
}
