import type { Found, TakeMark, Word } from './words'

/** What was promised and is not there any more. */
export interface Losses {
  /** Takes promised as stored that are missing or altered. */
  takes: number
  /** Labels promised as changed that have gone back. */
  labels: number
  /** Additions of which only a part is there. */
  halves: number
  /** Longest end of a recording under way that was lost, s; null when none was under way. */
  seconds: number | null
}

/** Keeps what one profile was promised, across all its kills, and compares it with what is found. */
export class Ledger {
  readonly #stored = new Map<string, TakeMark>()
  readonly #labels = new Map<string, number>()
  #adding: string[][] = []
  #running = new Map<string, number>()

  get takes(): number {
    return this.#stored.size
  }

  hear(word: Word): void {
    switch (word.is) {
      case 'sample':
        this.#running.set(word.id, word.tMs)
        return
      case 'stored':
        for (const take of word.takes) {
          this.#stored.set(take.id, take)
          this.#running.delete(take.id)
        }
        return
      case 'adding':
        this.#adding.push(word.ids)
        return
      case 'labelled':
        this.#labels.set(word.id, word.label)
        return
      // Nothing is promised of what a tester takes back; what is found again counts again.
      case 'undoing':
        this.#stored.delete(word.recordingId)
        return
      case 'withdrawing':
        for (const id of word.recordingIds) this.#stored.delete(id)
    }
  }

  /** After a kill and a new start. What was in the balance is settled by what is found. */
  check({ takes, unfinished }: Found): Losses {
    const found = new Map(takes.map((take) => [take.id, take]))
    const isThere = (one: TakeMark) => {
      const there = found.get(one.id)
      return there !== undefined && there.samples === one.samples && there.hash === one.hash
    }
    const missing = [...this.#stored.values()].filter((one) => !isThere(one))
    const halves = this.#adding.filter((ids) => {
      const count = ids.filter((id) => found.has(id)).length
      return count > 0 && count < ids.length
    })
    const ends = [...this.#running].map(([id, toldMs]) => {
      if (found.has(id)) return 0
      const lastMs = unfinished.find((one) => one.id === id)?.lastMs ?? 0
      return Math.max(0, toldMs - lastMs) / 1000
    })
    const labels = [...this.#labels].filter(([id, label]) => {
      const there = found.get(id)
      return there !== undefined && there.label < label
    })
    this.#settle(found, missing)
    return {
      takes: missing.length,
      labels: labels.length,
      halves: halves.length,
      seconds: ends.length === 0 ? null : Math.max(...ends),
    }
  }

  /** What is lost is counted once; whatever is there now has been seen and must stay. */
  #settle(found: ReadonlyMap<string, Found['takes'][number]>, missing: TakeMark[]): void {
    for (const { id } of missing) this.#stored.delete(id)
    for (const take of found.values()) {
      this.#stored.set(take.id, { id: take.id, samples: take.samples, hash: take.hash })
      if (this.#labels.has(take.id)) this.#labels.set(take.id, take.label)
    }
    this.#adding = []
    this.#running = new Map()
  }
}
