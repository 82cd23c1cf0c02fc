import type { Identified } from '../../shared/collect/collection'
import { collectionOf, planMerge, settleMerge } from '../../shared/collect/merge'
import { readIncoming } from '../../shared/collect/read-incoming'
import type { Session } from '../../shared/collect/session'
import { writeSessionFile } from '../../shared/collect/session-file'
import type { FullLibrary, RecordingWithSamples, Take } from '../../shared/model/library'
import type { Figure } from './figure'

const SESSIONS = 30
const TAKES = 60
/** The least counts, as other work on the machine only slows. */
const REPEATS = 3

/** Time from the bytes of session files to what storage is told to add, files checked on the way. */
export function benchMerge(demo: FullLibrary): Figure {
  const files = Array.from({ length: SESSIONS }, (_, n) => sessionBytes(demo, n))
  const times = Array.from({ length: REPEATS }, () => mergeSeconds(demo, files))
  return {
    figure: 'merge_30_sessions_s',
    value: Math.min(...times),
    unit: 's',
    note: `${SESSIONS} session files of ${TAKES} takes read, checked and merged, least of ${REPEATS}; without the browser's storage`,
  }
}

function mergeSeconds(demo: FullLibrary, files: readonly Uint8Array[]): number {
  const library = { ...demo.library, sessions: [], withdrawals: [] }
  const began = performance.now()
  const incoming = files.map((bytes, n) => {
    const read = readIncoming(`session ${n}`, bytes)
    if (!read.ok) throw new Error(read.message)
    return read.value
  })
  const mine = collectionOf(library, [])
  const merge = planMerge(
    mine,
    incoming.map(({ collection }) => collection),
  )
  const samples = new Map(incoming.flatMap((one) => [...one.samples]))
  let drawn = 0
  const newId = () => (++drawn).toString(16).padStart(32, '0')
  const own: Identified[] = []
  const change = settleMerge({ library, own }, merge, samples, new Map(), DATE, newId)
  const seconds = (performance.now() - began) / 1000
  if (change.add.length !== SESSIONS * TAKES) {
    throw new Error(`${change.add.length} of ${SESSIONS * TAKES} takes were merged.`)
  }
  return seconds
}

const DATE = '2026-11-25T18:00:00Z'

/** A session of the demo's takes; one reading differs, so that no two are the same recording. */
function sessionBytes({ library, recordings }: FullLibrary, n: number): Uint8Array {
  const takes = recordings.filter(
    (one): one is RecordingWithSamples<Take> => one.recording.kind === 'take',
  )
  const id = (n + 1).toString(16).padStart(32, '0')
  const session: Session = {
    id,
    planId: 'plan',
    libraryId: library.id,
    title: library.name,
    testerCode: `T${n}`,
    testerKey: id,
    hand: 'right',
    consentAt: DATE,
    startedAt: DATE,
    endedAt: DATE,
    device: takes[0]!.recording.device,
    gestures: library.gestures.map((one) => ({ id: one.id, name: one.name })),
  }
  const own = Array.from({ length: TAKES }, (_, i): RecordingWithSamples => {
    const { recording, samples } = takes[(n * TAKES + i) % takes.length]!
    const values = samples.values.slice()
    values[0] = Math.fround(n * TAKES + i)
    return {
      recording: {
        ...recording,
        id: `${id}-${i}`,
        testerCode: session.testerCode,
        sessionId: id,
        source: 'generated',
      },
      samples: { tMs: samples.tMs, values },
    }
  })
  return writeSessionFile({ session, recordings: own })
}
