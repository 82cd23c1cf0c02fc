import { computed, type ReadonlySignal, signal } from '@preact/signals'
import { recovered } from '../../recording/facts'
import type { Plan } from '../../shared/collect/plan'
import {
  asTester,
  type KnownTester,
  newRun,
  RUN_BYTES,
  runFrom,
} from '../../shared/collect/session-record'
import { reconciled, type SessionRun } from '../../shared/collect/session-run'
import {
  DEFAULT_TRAINING,
  type Hand,
  type Library,
  type Recording,
} from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import type { Target } from '../../shared/model/target'
import { SESSION_TROUBLE } from '../../shared/words/en/session-trouble'
import type { OutFile } from '../exports'
import type { Shelf } from '../shelf'
import { finish, hasLeft, withdraw } from './home'
import { putRun, recordingsOf } from './kept-run'
import { SessionRunner } from './runner'
import type { MakerParts } from './take-maker'
import { type WaitingSession, waitingSessions } from './waiting'

export type { SessionPhase } from './phase'
export type { SessionRunner } from './runner'
export type { WaitingSession } from './waiting'

export interface SessionParts extends MakerParts {
  defaultTarget: () => Target
}

export interface SessionsState {
  /** Sessions of this phone, newest first; those under way have no `endedAt`. */
  runs: ReadonlySignal<SessionRun[]>
  /** Those of the open library that wait to go on, or to be handed over. */
  waiting: ReadonlySignal<WaitingSession[]>
  /** Reads them again from the store. */
  read(): Promise<void>
  /** A new session of somebody who has agreed just now; `known` from another part of the plan. */
  begin(plan: Plan, hand: Hand, known?: KnownTester): Promise<Result<SessionRun>>
  /** The session where it stands, also after a kill. Close the runner when its screen goes. */
  open(id: string): Promise<Result<SessionRunner>>
  /** Enters the session in its library, and packs it as a file that goes home. */
  finish(id: string): Promise<Result<OutFile>>
  /** Deletes every recording of the session from this phone, and the session itself; can be undone. */
  withdraw(id: string): Promise<Result<null>>
}

const GONE = fail('session/gone', SESSION_TROUBLE.gone)

/** Testers' sessions on this phone. */
export function createSessions(parts: SessionParts): SessionsState {
  const { shelf } = parts
  const { store } = shelf
  const runs = signal<SessionRun[]>([])

  const read = async () => {
    const found = await Promise.all(
      shelf.libraries.peek().map(async (library) => {
        const items = await store.listItems('sessions', library.id)
        const kept = items.flatMap(({ value }) => runFrom(value) ?? [])
        return kept.filter((run) => !hasLeft(library, run))
      }),
    )
    runs.value = found.flat().sort((a, b) => b.startedAt.localeCompare(a.startedAt))
  }
  const find = async (id: string) => {
    await read()
    const run = runs.peek().find((one) => one.id === id)
    const library = shelf.libraries.peek().find((one) => one.id === run?.plan.libraryId)
    return run === undefined || library === undefined ? null : { run, library }
  }

  return {
    runs,
    waiting: computed(() => {
      const library = shelf.current.value
      return library === null ? [] : waitingSessions(runs.value, library, Date.now())
    }),
    read,
    async begin(plan, hand, known) {
      const library = await libraryFor(shelf, plan, parts.defaultTarget)
      if (!library.ok) return library
      const random = crypto.getRandomValues(new Uint8Array(RUN_BYTES))
      const fresh = newRun(plan, hand, new Date().toISOString(), random)
      const run = known === undefined ? fresh : asTester(fresh, known)
      const stored = await putRun(shelf, run)
      return stored.ok ? ok(run) : stored
    },
    async open(id) {
      const found = await find(id)
      if (found === null) return GONE
      const stored = await recover(shelf, found.library.id, id)
      const run = reconciled(found.run, stored, new Date().toISOString())
      await putRun(shelf, run)
      return ok(new SessionRunner(parts, found.library, run, stored))
    },
    async finish(id) {
      const found = await find(id)
      return found === null ? GONE : finish(shelf, found.library, found.run)
    },
    async withdraw(id) {
      const found = await find(id)
      if (found === null) return GONE
      const removed = await withdraw(shelf, found.library, found.run, read)
      await read()
      return removed
    },
  }
}

/**
 * What is stored of a session. A take that a kill cut off was in progress and is asked again; of a
 * background all that was written is kept.
 */
async function recover(shelf: Shelf, libraryId: string, id: string): Promise<Recording[]> {
  const { store } = shelf
  for (const unfinished of await store.unfinished()) {
    const { recording } = unfinished
    if (recording.sessionId !== id) continue
    if (recording.kind === 'take') await store.discardUnfinished(recording.id)
    else await store.finishUnfinished(recording.id, recovered(unfinished))
  }
  return recordingsOf(shelf, libraryId, id)
}

/** The library that the plan collects for: the designer's own, or one made here for its takes. */
async function libraryFor(
  shelf: Shelf,
  plan: Plan,
  defaultTarget: () => Target,
): Promise<Result<Library>> {
  const known = shelf.libraries.peek().find(({ id }) => id === plan.libraryId)
  const here = known ?? (await emptyLibrary(shelf, plan, defaultTarget))
  const ids = new Set(here.gestures.map(({ id }) => id))
  const missing = plan.gestures.filter(({ gestureId }) => !ids.has(gestureId))
  const gestures = missing.map(({ gestureId, name }) => ({ id: gestureId, name, note: '' }))
  const library = { ...here, gestures: [...here.gestures, ...gestures] }
  if (known !== undefined && missing.length === 0) return ok(known)
  const stored = await shelf.store.putLibrary(library)
  if (!stored.ok) return stored
  await shelf.reload()
  return ok(library)
}

/** Deleted on this phone a moment ago, it would stay so: joining brings it back. */
async function emptyLibrary(
  { store }: Shelf,
  plan: Plan,
  defaultTarget: () => Target,
): Promise<Library> {
  const deleted = await store.restoreLibrary(plan.libraryId)
  const back = deleted.ok
    ? (await store.listLibraries()).find(({ id }) => id === plan.libraryId)
    : undefined
  return (
    back ?? {
      id: plan.libraryId,
      name: plan.title,
      createdAt: new Date().toISOString(),
      generated: false,
      gestures: [],
      target: defaultTarget(),
      training: { ...DEFAULT_TRAINING },
    }
  )
}
