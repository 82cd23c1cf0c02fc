import { signal } from '@preact/signals'
import type {
  FoundSession,
  SessionMark,
  TakeMark,
  Word,
} from '../../../src/build/bench/kills/words'
import type { RecogniserClient } from '../../../src/recogniser/client'
import { createSimulatedSource } from '../../../src/sensors/simulated-source'
import type { Plan } from '../../../src/shared/collect/plan'
import { promptsOf } from '../../../src/shared/collect/prompts'
import { progressOf } from '../../../src/shared/collect/session-progress'
import type { SessionRun } from '../../../src/shared/collect/session-run'
import type { Take } from '../../../src/shared/model/library'
import { ok } from '../../../src/shared/model/result'
import type { SampleBlock } from '../../../src/shared/model/sample'
import type { Random } from '../../../src/shared/statistics/random'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { createMotion } from '../../../src/state/motion'
import { createNotices } from '../../../src/state/notices'
import { createSessions, type SessionRunner } from '../../../src/state/session'
import { createShelf } from '../../../src/state/shelf'
import { joinBlocks } from '../../../src/storage/chunk'
import type { Store } from '../../../src/storage/store'
import { runClockFaster } from './fast-clock'

/*
 * A tester's session as the app leads it, its state driven without screens: what the screens would tell
 * the tester is told to whoever kills the browser.
 */

/** Short enough to be gone through between two kills, with all that a session has. */
const PLAN: Plan = {
  id: 'plan-under-kills',
  libraryId: 'collected-under-kills',
  title: 'Night parade',
  gestures: ['raise', 'ring'].map((id) => {
    return { gestureId: id, name: id, takes: 3, words: '', demonstration: null }
  }),
  order: 'shuffled',
  hand: 'own',
  grip: 'free',
  restEvery: 2,
  restMs: 3000,
  backgroundMs: 4000,
  part: { number: 1, of: 1 },
}
const SPEED = 16
/** Longer than any life of this page, ms of its fast clock. */
const NEVER_MS = 3_600_000

export interface SessionPage {
  store: Store
  recogniser: RecogniserClient
  tell: (word: Word) => void
  markOf: (id: string, samples: SampleBlock) => TakeMark
  /** Does what is asked and nothing else: takes nothing back. */
  isSteady?: boolean
}

/** Sessions over this store, moved by the simulated phone. */
async function open({ store, recogniser }: SessionPage, seed: number) {
  const shelf = createShelf(store, createNotices())
  const simulated = createSimulatedSource(seed)
  const motion = createMotion({ phone: createSimulatedSource(seed), simulated })
  motion.use('simulated')
  await shelf.reload()
  const performing = signal(false)
  const parts = { shelf, motion, recogniser, performing, deviceLabel: 'test', defaultTarget }
  return { shelf, simulated, sessions: createSessions(parts) }
}

function standingOf(run: SessionRun): SessionMark {
  const prompts = promptsOf(run.plan, run.seed)
  const kept = run.outcomes.flatMap((outcome, at) =>
    outcome.kind === 'kept' && prompts[at]?.kind === 'take'
      ? { at, recordingId: outcome.recordingId }
      : [],
  )
  return { id: run.id, kept }
}

/** Every session of this phone, opened as by a tester who comes back. */
export async function findSessions(page: SessionPage): Promise<FoundSession[]> {
  const { shelf, sessions } = await open(page, 1)
  await sessions.read()
  const found: FoundSession[] = []
  for (const { id, plan } of sessions.runs.peek()) {
    const opened = await sessions.open(id)
    if (!opened.ok) continue
    const run = opened.value.run.peek()
    opened.value.close()
    const stored = await page.store.listRecordings(plan.libraryId)
    const takes = stored.filter((one): one is Take => one.kind === 'take' && one.sessionId === id)
    const library = shelf.libraries.peek().find((one) => one.id === plan.libraryId)
    found.push({
      ...standingOf(run),
      shown: progressOf(run).kept,
      unasked: unaskedOf(run, takes),
      takes: takes.map((take) => take.id),
      isHome: (library?.sessions ?? []).some((session) => session.id === id),
    })
  }
  return found
}

function unaskedOf(run: SessionRun, takes: readonly Take[]): number {
  const prompts = promptsOf(run.plan, run.seed)
  return standingOf(run).kept.filter(({ at, recordingId }) => {
    const prompt = prompts[at]
    const take = takes.find(({ id }) => id === recordingId)
    return prompt?.kind !== 'take' || take?.gestureId !== prompt.gestureId
  }).length
}

/** Goes on with the session that is open, or begins one, again and again. */
export async function performSessions(page: SessionPage, random: Random): Promise<void> {
  runClockFaster(SPEED)
  const recorded = new Map<string, SampleBlock[]>()
  const store = overheard(page.store, recorded)
  const { simulated, sessions } = await open({ ...page, store }, random.nextUint32())
  await sessions.read()
  page.tell({ is: 'working' })
  for (;;) {
    const waiting = sessions.runs.peek().find(({ endedAt }) => endedAt === null)
    const begun = waiting === undefined ? await sessions.begin(PLAN, 'right') : ok(waiting)
    if (!begun.ok) throw new Error(begun.message)
    const opened = await sessions.open(begun.value.id)
    if (!opened.ok) throw new Error(opened.message)
    await perform(opened.value, { ...page, simulated, random, recorded })
    await leave(sessions, opened.value, page, random)
  }
}

interface Performance extends SessionPage {
  simulated: ReturnType<typeof createSimulatedSource>
  random: Random
  recorded: ReadonlyMap<string, SampleBlock[]>
}

/** A tester who does what is asked, and now and then takes back, leaves out, pauses or repeats. */
async function perform(runner: SessionRunner, page: Performance): Promise<void> {
  const { simulated, random, tell, isSteady = false } = page
  const stands = () => tell({ is: 'stands', session: standingOf(runner.run.peek()) })
  const chance = (share: number) => !isSteady && random.uniform(0, 1) < share
  stands()
  await new Promise<void>((resolve) => {
    const act = async () => {
      const { name } = runner.phase.peek()
      if (name === 'waiting' && chance(0.2)) return takeBack(runner, tell, stands)
      if (name === 'waiting' && chance(0.1)) return runner.skip().then(stands)
      if (['waiting', 'paused', 'no-readings', 'not-stored'].includes(name)) return runner.start()
      if (name === 'go') return simulated.perform(promptedGesture(runner))
      if (name === 'doubt') return chance(0.5) ? runner.again() : runner.keep()
      if (name === 'ready' && chance(0.1)) return runner.pause()
      if (name === 'resting' && chance(0.3)) return runner.endRest()
      if (name === 'ended') return resolve()
    }
    runner.phase.subscribe(({ name }) => {
      if (name === 'good') {
        tellLast(runner, page)
        stands()
      }
      // Whoever acts does so after what was shown, never within.
      setTimeout(() => void act(), 0)
    })
  })
  stands()
}

function promptedGesture(runner: SessionRunner): string {
  const { plan, seed, outcomes } = runner.run.peek()
  const prompt = promptsOf(plan, seed)[outcomes.length]
  return prompt?.kind === 'take' ? prompt.gestureId : 'raise'
}

/** "Good" promises the take, with what the sensor gave. */
function tellLast(runner: SessionRunner, { recorded, markOf, tell }: Performance): void {
  const last = standingOf(runner.run.peek()).kept.at(-1)
  if (last === undefined) return
  const samples = joinBlocks(recorded.get(last.recordingId) ?? [])
  tell({ is: 'stored', takes: [markOf(last.recordingId, samples)] })
}

async function takeBack(
  runner: SessionRunner,
  tell: (word: Word) => void,
  stands: () => void,
): Promise<void> {
  const { id, kept } = standingOf(runner.run.peek())
  const last = kept.at(-1)
  if (last === undefined) return runner.start()
  tell({ is: 'undoing', id, recordingId: last.recordingId })
  await runner.undo()
  stands()
}

/** Hands the session over, or now and then takes all of it back. */
async function leave(
  sessions: Awaited<ReturnType<typeof open>>['sessions'],
  runner: SessionRunner,
  { tell, isSteady = false }: SessionPage,
  random: Random,
): Promise<void> {
  const { id, kept } = standingOf(runner.run.peek())
  runner.close()
  if (isSteady || random.uniform(0, 1) < 0.7) {
    if ((await sessions.finish(id)).ok) tell({ is: 'home', id })
    await sessions.read()
    return
  }
  const recordingIds = kept.map(({ recordingId }) => recordingId)
  tell({ is: 'withdrawing', id, recordingIds })
  if ((await sessions.withdraw(id)).ok) tell({ is: 'withdrawn', id, recordingIds })
}

/** The same store; what goes into its journals is kept here too. */
function overheard(store: Store, recorded: Map<string, SampleBlock[]>): Store {
  return {
    ...store,
    openJournal: async (recording) => {
      const journal = await store.openJournal(recording)
      if (!journal.ok) return journal
      const blocks: SampleBlock[] = []
      recorded.set(recording.id, blocks)
      const append = journal.value.append.bind(journal.value)
      journal.value.append = (block) => {
        blocks.push(block)
        return append(block)
      }
      return journal
    },
  }
}

/** A store that answers before it has written: what a session over it promises is lost with a kill. */
export function promising(store: Store): Store {
  const later = (work: () => unknown) => setTimeout(work, NEVER_MS)
  const begun = new Set<string>()
  return {
    ...store,
    async putItem(kind, item) {
      const isFirst = !begun.has(item.id)
      begun.add(item.id)
      if (isFirst) return store.putItem(kind, item)
      later(() => store.putItem(kind, item))
      return ok(null)
    },
    async openJournal(recording) {
      const journal = await store.openJournal(recording)
      if (!journal.ok) return journal
      const finish = journal.value.finish.bind(journal.value)
      journal.value.append = async () => ok(null)
      journal.value.finish = async (finished) => {
        later(() => finish(finished))
        return ok(finished)
      }
      return journal
    },
  }
}
