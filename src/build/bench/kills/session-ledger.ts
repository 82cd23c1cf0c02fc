import type { FoundSession, SessionMark, Word } from './words'

/** What testers were told of their sessions and is not so any more. */
export interface SessionLosses {
  /** Sessions that cannot be gone on with, or are only partly withdrawn. */
  gone: number
  /** Kept takes that the session does not have any more. */
  takes: number
  /** Takes that answer another prompt than they did, or one that did not ask for them. */
  misplaced: number
  /** Takes that count twice, or are stored without answering any prompt. */
  doubled: number
  /** Sessions whose progress is not what was told; a take not told yet may be there. */
  progress: number
}

export const NO_SESSION_LOSSES: SessionLosses = {
  gone: 0,
  takes: 0,
  misplaced: 0,
  doubled: 0,
  progress: 0,
}

/** Where a session stands as told, and what is in the balance. */
interface Told extends SessionMark {
  undoing: string | null
  withdrawal: 'none' | 'asked' | 'told'
  isHome: boolean
}

/** Keeps where testers were told that their sessions stand, and compares it with what goes on. */
export class SessionLedger {
  readonly #told = new Map<string, Told>()
  /** Sessions seen, withdrawn ones too. */
  get sessions(): number {
    return this.#told.size
  }

  hear(word: Word): void {
    switch (word.is) {
      case 'stands':
        this.#told.set(word.session.id, {
          ...{ undoing: null, withdrawal: 'none', isHome: false },
          ...word.session,
        })
        return
      case 'undoing':
        this.#change(word.id, { undoing: word.recordingId })
        return
      case 'withdrawing':
        this.#change(word.id, { withdrawal: 'asked' })
        return
      case 'withdrawn':
        this.#change(word.id, { withdrawal: 'told' })
        return
      case 'home':
        this.#change(word.id, { isHome: true })
    }
  }

  /** After a kill and a new start. What was in the balance is settled by what is found. */
  check(found: readonly FoundSession[]): SessionLosses {
    const there = new Map(found.map((one) => [one.id, one]))
    const losses = [
      ...[...this.#told.values()].map((told) => lossesOf(told, there.get(told.id))),
      ...found.map(({ takes, kept, unasked }) => {
        return { ...NO_SESSION_LOSSES, misplaced: unasked, doubled: surplus(takes, kept) }
      }),
    ]
    for (const told of this.#told.values()) {
      if (!there.has(told.id)) this.#change(told.id, { withdrawal: 'told' })
    }
    for (const { id, kept, isHome } of found) {
      this.#told.set(id, { id, kept, isHome, undoing: null, withdrawal: 'none' })
    }
    return losses.reduce(addSessionLosses, NO_SESSION_LOSSES)
  }

  #change(id: string, change: Partial<Told>): void {
    const told = this.#told.get(id)
    if (told !== undefined) this.#told.set(id, { ...told, ...change })
  }
}

export function addSessionLosses(a: SessionLosses, b: SessionLosses): SessionLosses {
  return {
    gone: a.gone + b.gone,
    takes: a.takes + b.takes,
    misplaced: a.misplaced + b.misplaced,
    doubled: a.doubled + b.doubled,
    progress: a.progress + b.progress,
  }
}

function lossesOf(told: Told, found: FoundSession | undefined): SessionLosses {
  if (found === undefined) return { ...NO_SESSION_LOSSES, gone: told.withdrawal === 'none' ? 1 : 0 }
  // Where a withdrawal was asked and has not happened, everything is as before it.
  if (told.withdrawal === 'told') return { ...NO_SESSION_LOSSES, gone: 1 }
  const places = new Map(found.kept.map(({ at, recordingId }) => [recordingId, at]))
  const owed = told.kept.filter(({ recordingId }) => recordingId !== told.undoing)
  const missing = owed.filter(({ recordingId }) => !places.has(recordingId))
  const moved = owed.filter(({ at, recordingId }) => (places.get(recordingId) ?? at) !== at)
  // One at most was stored and not told before the kill.
  const stands = found.kept.length >= owed.length && found.kept.length <= told.kept.length + 1
  const isRight = stands && found.shown === found.kept.length && (found.isHome || !told.isHome)
  return {
    gone: 0,
    takes: missing.length,
    misplaced: moved.length,
    doubled: 0,
    progress: isRight ? 0 : 1,
  }
}

/** Takes that the session has twice, and those it does not know of. */
function surplus(takes: readonly string[], kept: SessionMark['kept']): number {
  const known = new Set(kept.map(({ recordingId }) => recordingId))
  return kept.length - known.size + takes.filter((id) => !known.has(id)).length
}
