import type { Library, Recording } from '../shared/model/library'

/**
 * Text that changes whenever something changes that training or evaluation reads. Samples never
 * change, so the ids of recordings stand for them; notes, names of testers' devices and the answers
 * of gestures do not count.
 */
export function fingerprint(library: Library | null, recordings: Recording[]): string {
  if (library === null) return ''
  const parts = recordings.map((recording) => {
    if (recording.kind === 'background') return `${recording.id} background`
    const { id, gestureId, testerCode, trim } = recording
    const part = trim === null ? '' : `${trim.startMs}-${trim.endMs}`
    return `${id} ${gestureId} ${testerCode} ${part}`
  })
  const gestures = library.gestures.map(({ id, name }) => [id, name])
  return JSON.stringify([library.target, library.training, gestures, parts.sort()])
}
