import type { Library, Recording } from '../shared/model/library'

/**
 * Text that changes whenever something changes that training or evaluation reads. Samples never
 * change, so the ids of recordings stand for them; notes and names of testers' devices do not count.
 */
export function fingerprint(library: Library | null, recordings: Recording[]): string {
  if (library === null) return ''
  const parts = recordings.map((recording) => {
    if (recording.kind === 'background') return `${recording.id} background`
    const { id, gestureId, testerCode, trim } = recording
    const part = trim === null ? '' : `${trim.startMs}-${trim.endMs}`
    return `${id} ${gestureId} ${testerCode} ${part}`
  })
  return JSON.stringify([library.target, library.training, library.gestures, parts.sort()])
}
