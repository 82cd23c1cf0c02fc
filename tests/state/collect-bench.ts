import type { SessionFile } from '../../src/shared/collect/session'
import { sessionFileName, writeSessionFile } from '../../src/shared/collect/session-file'
import type { App } from '../../src/state/app'
import { sampleSessionFile } from '../shared/collect/samples'
import { openApp } from './app-bench'

/** An app with a library of Raise and Ring, and a session collected for it. */
export async function open(name?: string): Promise<{ app: App; session: SessionFile }> {
  const app = await openApp(name)
  await app.library.create('Night parade')
  for (const name of ['Raise', 'Ring']) await app.library.addGesture(name)
  const library = app.library.current.value!
  const session = sampleSessionFile(6, {
    libraryId: library.id,
    gestures: library.gestures.map(({ id, name }) => ({ id, name })),
  })
  return { app, session }
}

export const asFile = (
  session: SessionFile,
  name = sessionFileName(session.session, new Uint8Array()),
) => ({
  name,
  bytes: async () => writeSessionFile(session),
})

export const takes = (app: App) => app.library.recordings.value

export async function bringHome(app: App, session: SessionFile) {
  const collect = await app.openCollect()
  await collect.bring([asFile(session)])
  await collect.agree()
  return collect
}

/** A session whose gestures, in their order, go by other names and ids than the library's. */
export function underNames({ session, recordings }: SessionFile, names: string[]): SessionFile {
  const own = session.gestures.map(({ id }) => id)
  const gestures = names.map((name) => ({ id: name.toLowerCase(), name }))
  return {
    session: { ...session, gestures },
    recordings: recordings.map(({ recording, samples }) => ({
      recording:
        recording.kind === 'take'
          ? { ...recording, gestureId: gestures[own.indexOf(recording.gestureId)]!.id }
          : recording,
      samples,
    })),
  }
}

/** One take of the designer's own, as from a log: its content is not known yet. */
export async function addOwnTake(app: App, gestureId: string): Promise<void> {
  const [item] = sampleSessionFile(1, {}, 99).recordings
  const log = { fileName: 'own.csv', samples: item!.samples, hasGyro: true }
  const stored = await app.library.addLogs([log], { gestureId, testerCode: 'T09', hand: 'left' })
  if (!stored.ok) throw new Error(stored.message)
}
