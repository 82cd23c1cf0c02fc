import { type ReadonlySignal, signal } from '@preact/signals'
import type { RecogniserClient } from '../../recogniser/client'
import type { Identified } from '../../shared/collect/collection'
import { type Incoming, matchGestures } from '../../shared/collect/incoming'
import type { LabelChange } from '../../shared/collect/labels'
import { mapGestures } from '../../shared/collect/map-gestures'
import { type Marks, withRecalled } from '../../shared/collect/marks'
import {
  collectionOf,
  conflictKey,
  type Merge,
  planMerge,
  settleMerge,
} from '../../shared/collect/merge'
import { apart, sharedCodes } from '../../shared/collect/same-code'
import type { Gesture, Library } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import type { Progress } from '../../shared/protocol/recogniser'
import { COLLECTING } from '../../shared/words/en/collecting'
import type { LibraryFacts } from '../../storage/contents'
import { MOST_GESTURES } from '../gestures'
import { newId } from '../id'
import type { Shelf } from '../shelf'
import { identified, identify } from './identify'
import { NO_LIBRARY } from './no-library'
import { type Brought, undoBring } from './undo-bring'

/** Something to bring home: a file, or what came by other ways. */
export interface BroughtFile {
  name: string
  bytes(): Promise<Uint8Array>
}

/** Something that could not be fetched, and why. */
export interface UnreadFile {
  name: string
  wrong: string
}

/** What the files bring and what is to be decided; nothing of it is stored. */
export interface BringReport {
  library: Library
  files: { name: string; wrong: string | null }[]
  merge: Merge
  /** Of the library, with those that would be added. */
  gestures: Gesture[]
  /** Gestures of files that the library has not; `to` is one of its own, or null for a new one. */
  strangers: { id: string; name: string; takes: number; to: string | null }[]
  /** Codes that were given by hand on both sides, and whether they are one person's. */
  sharedCodes: { code: string; samePerson: boolean }[]
  /** Chosen value in each conflict, by `conflictKey`. */
  decided: ReadonlyMap<string, LabelChange>
}

export type Bringing =
  | { state: 'none' }
  | { state: 'reading'; progress: Progress }
  | { state: 'failed'; message: string }
  | { state: 'report'; report: BringReport }

export interface BringState {
  bringing: ReadonlySignal<Bringing>
  /**
   * Reads files and shows what they would bring; replaces what was shown before.
   * @param unread told with them, as files that could not be read
   */
  bring(files: readonly BroughtFile[], unread?: readonly UnreadFile[]): Promise<Result<null>>
  /** Own gesture for one of a file's, or null to add it. */
  mapGesture(id: string, to: string | null): void
  decide(key: string, choice: LabelChange): void
  setSamePerson(code: string, samePerson: boolean): void
  /** Decides every open conflict for what counts here, or for the other side. */
  decideAll(side: 'here' | 'there'): void
  /** Stores what the report says, all or nothing, once every conflict is decided. */
  agree(): Promise<Result<null>>
  forget(): void
}

interface Choices {
  to: Map<string, string | null>
  decided: Map<string, LabelChange>
  samePerson: Set<string>
}

/** Brings files home: read, reported, decided, and stored only when the person agrees. */
export class BringHome implements BringState {
  readonly bringing = signal<Bringing>({ state: 'none' })
  readonly #shelf: Shelf
  readonly #recogniser: RecogniserClient
  #incoming: Incoming[] = []
  /** Counts what was chosen: a reading that was overtaken stops. */
  #run = 0
  #files: BringReport['files'] = []
  #own: Identified[] = []
  #marks: Marks = new Map()
  /** The one that the files were read for; it may not be the open one any more. */
  #library: Library | null = null
  #storing: Promise<Result<null>> | null = null
  #newIds = new Map<string, string>()
  #choices: Choices = { to: new Map(), decided: new Map(), samePerson: new Set() }

  constructor(shelf: Shelf, recogniser: RecogniserClient) {
    this.#shelf = shelf
    this.#recogniser = recogniser
  }

  async bring(
    files: readonly BroughtFile[],
    unread: readonly UnreadFile[] = [],
  ): Promise<Result<null>> {
    this.forget()
    this.#files.push(...unread)
    const run = this.#run
    for (const [index, file] of files.entries()) {
      const progress = { done: index, total: files.length, what: COLLECTING.reading(file.name) }
      this.bringing.value = { state: 'reading', progress }
      const read = await this.#read(file)
      // Other files were chosen meanwhile.
      if (run !== this.#run) return ok(null)
      this.#files.push({ name: file.name, wrong: read.ok ? null : read.message })
      if (read.ok) this.#incoming.push(read.value)
    }
    const opened = await this.#openTheirLibrary()
    const ready = opened.ok ? await this.#identify() : opened
    if (run !== this.#run) return ok(null)
    if (ready.ok) this.#show()
    else this.bringing.value = { state: 'failed', message: ready.message }
    return ready.ok ? ok(null) : ready
  }

  mapGesture(id: string, to: string | null): void {
    this.#choices.to.set(id, to)
    this.#show()
  }

  decide(key: string, choice: LabelChange): void {
    this.#choices.decided.set(key, choice)
    this.#show()
  }

  decideAll(side: 'here' | 'there'): void {
    const { value } = this.bringing
    if (value.state !== 'report') return
    for (const conflict of value.report.merge.conflicts) {
      const choice = conflict.choices[side === 'here' ? 0 : 1]
      if (choice !== undefined) this.#choices.decided.set(conflictKey(conflict), choice)
    }
    this.#show()
  }

  setSamePerson(code: string, samePerson: boolean): void {
    if (samePerson) this.#choices.samePerson.add(code)
    else this.#choices.samePerson.delete(code)
    this.#show()
  }

  agree(): Promise<Result<null>> {
    // A second tap agrees to what is being stored, and does not store it again.
    this.#storing ??= this.#agree().finally(() => {
      this.#storing = null
    })
    return this.#storing
  }

  forget(): void {
    this.#run += 1
    this.#incoming = []
    this.#files = []
    this.#library = null
    this.#newIds = new Map()
    this.#choices = { to: new Map(), decided: new Map(), samePerson: new Set() }
    this.bringing.value = { state: 'none' }
  }

  async #agree(): Promise<Result<null>> {
    if (this.bringing.peek().state !== 'report') return NOTHING
    const run = this.#run
    // Other tabs and sessions may have written since: what is agreed to is planned on what is there.
    const ready = await this.#identify()
    if (!ready.ok) return ready
    let brought: Brought | undefined
    const stored = await this.#shelf.store.planChange(ready.value.id, (facts) => {
      const planned = this.#settled(facts)
      if (!planned.ok) return planned
      brought = planned.value
      return ok({ ...planned.value.change, restore: [] })
    })
    if (!stored.ok || brought === undefined) {
      if (run === this.#run) this.#show()
      return stored.ok ? NOTHING : stored
    }
    const done = brought
    if (run === this.#run) this.forget()
    await this.#shelf.reload()
    await this.#shelf.askToKeep()
    this.#shelf.notices.say(COLLECTING.broughtHome(done.change.add.length), () =>
      undoBring(this.#shelf, done),
    )
    return ok(null)
  }

  /** What agreeing changes in the library as it is at this moment, or why it cannot be agreed to. */
  #settled({ library, recordings }: LibraryFacts): Result<Brought> {
    this.#library = library
    this.#own = recordings.flatMap((one) => identified(one))
    const own = this.#own
    const report = this.#report(library)
    const refused = refusal(report)
    if (refused !== null) return refused
    const change = settleMerge(
      { library: { ...library, gestures: report.gestures }, own },
      report.merge,
      new Map(this.#incoming.flatMap((one) => [...one.samples])),
      report.decided,
      new Date().toISOString(),
      newId,
    )
    return ok({ before: library, own, change })
  }

  async #read(file: BroughtFile): Promise<Result<Incoming>> {
    try {
      return await this.#recogniser.readIncoming(file.name, await file.bytes())
    } catch {
      return fail('collect/unreadable', COLLECTING.unreadable)
    }
  }

  /** Files of sessions name the library they were collected for; with several there, it is opened. */
  async #openTheirLibrary(): Promise<Result<null>> {
    const wanted = new Set(this.#incoming.map(({ from }) => from.libraryId))
    const current = this.#shelf.current.peek()
    if (current !== null && wanted.has(current.id)) return ok(null)
    const other = this.#shelf.libraries.peek().find(({ id }) => wanted.has(id))
    if (other !== undefined) await this.#shelf.open(other.id)
    return this.#shelf.current.peek() === null ? NO_LIBRARY : ok(null)
  }

  /** The library that the files were read for, as it is now. */
  async #identify(): Promise<Result<Library>> {
    const run = this.#run
    const open = this.#shelf.current.peek()
    if (open === null) return NO_LIBRARY
    const wanted = this.#library ?? open
    if (open.id !== wanted.id) return otherLibrary(wanted)
    const known = await identify(this.#shelf, this.#recogniser, open.id)
    if (!known.ok) return known
    // Other files were chosen meanwhile.
    if (run !== this.#run) return NOTHING
    this.#marks = await this.#shelf.store.marks()
    this.#own = known.value.own
    this.#library = known.value.library
    return ok(known.value.library)
  }

  #show(): void {
    const library = this.#library
    if (library === null || this.#files.length === 0) return
    this.bringing.value = { state: 'report', report: this.#report(library) }
  }

  #report(library: Library): BringReport {
    const bare = collectionOf(library, this.#own)
    const matched = this.#matched(library)
    const mapped = this.#incoming.map(({ collection }) =>
      mapGestures(collection, (id) => matched.get(id) ?? this.#newId(id)),
    )
    const shared = [...new Set(mapped.flatMap((one) => sharedCodes(bare, one)))]
    const others = shared.filter((code) => !this.#choices.samePerson.has(code))
    const taken = this.#own.map(({ testerCode }) => testerCode)
    const at = new Date().toISOString()
    const theirs = mapped.map((one) => apart(one, others, taken, at, newId))
    const mine = withRecalled(bare, theirs, this.#marks, library.id, at)
    return {
      library,
      files: this.#files,
      merge: planMerge(mine, theirs),
      gestures: [...library.gestures, ...this.#newGestures(library)],
      strangers: this.#strangers(library),
      sharedCodes: shared.map((code) => ({
        code,
        samePerson: this.#choices.samePerson.has(code),
      })),
      decided: new Map(this.#choices.decided),
    }
  }

  /** Own gestures for those of all files; null where one is to be added. */
  #matched(library: Library): Map<string, string | null> {
    const all = this.#incoming.flatMap(({ gestures }) => gestures)
    return new Map([...matchGestures(library.gestures, all), ...this.#choices.to])
  }

  #strangers(library: Library): BringReport['strangers'] {
    const all = this.#incoming.flatMap(({ gestures }) => gestures)
    const found = matchGestures(library.gestures, all)
    const names = new Map(all.map(({ id, name }) => [id, name]))
    return [...found]
      .filter(([, own]) => own === null)
      .map(([id]) => ({
        id,
        name: names.get(id) ?? '',
        takes: this.#takesOf(id),
        to: this.#choices.to.get(id) ?? null,
      }))
      .filter(({ takes }) => takes > 0)
  }

  #takesOf(gestureId: string): number {
    const all = this.#incoming.flatMap(({ collection }) => collection.recordings)
    const own = all.filter((one) => one.kind === 'take' && one.gestureId === gestureId)
    // Two files may hold the same take.
    return new Set(own.map(({ contentId }) => contentId)).size
  }

  #newGestures(library: Library): Gesture[] {
    const added = this.#strangers(library).filter(({ to }) => to === null)
    // Two files may bring one gesture under two ids.
    return [...new Map(added.map(({ id, name }) => [this.#newId(id), name]))].map(([id, name]) => {
      return { id, name, note: '' }
    })
  }

  #newId(gestureId: string): string {
    const all = this.#incoming.flatMap(({ gestures }) => gestures)
    const name = all.find(({ id }) => id === gestureId)?.name.toLowerCase() ?? gestureId
    const known = this.#newIds.get(name) ?? newId()
    this.#newIds.set(name, known)
    return known
  }
}

/** Why what the report says cannot be stored; null when it can. */
function refusal({ library, gestures, merge, decided }: BringReport): Result<never> | null {
  if (merge.conflicts.some((one) => !decided.has(conflictKey(one)))) return NOT_DECIDED
  const isTooMany = gestures.length > MOST_GESTURES && gestures.length > library.gestures.length
  if (!isTooMany) return null
  return fail(
    'collect/too-many-gestures',
    COLLECTING.tooManyGestures(MOST_GESTURES, gestures.length),
  )
}

function otherLibrary({ name }: Library): Result<never> {
  return fail('collect/other-library', COLLECTING.otherLibrary(name))
}

const NOTHING = fail('collect/nothing', COLLECTING.nothing)
const NOT_DECIDED = fail('collect/not-decided', COLLECTING.notDecided)
