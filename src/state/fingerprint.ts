import type { Library, Recording } from '../shared/model/library'

/**
 * Text that changes whenever something changes that training or evaluation reads. Samples never
 * change, so the ids of recordings stand for them; notes, names of devices, the answers of gestures
 * and what the target is called and clocked with do not count.
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
  const { name, preset, clockHz, flashBytes, calibration, ...read } = library.target
  return JSON.stringify([read, library.training, gestures, parts.sort()])
}

/** The same for an evaluation, which answers for any threshold factor once it is measured. */
export function evaluationFingerprint(library: Library | null, recordings: Recording[]): string {
  if (library === null) return ''
  return fingerprint(
    { ...library, training: { ...library.training, thresholdFactor: 1 } },
    recordings,
  )
}
