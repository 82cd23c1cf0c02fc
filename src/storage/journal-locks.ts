/**
 * Which journals are being written, in this tab or another one. A lock lives as long as its tab: a
 * journal without one was left behind by a kill.
 */
export class JournalLocks {
  readonly #own = new Set<string>()

  constructor(readonly databaseName: string) {}

  /** Marks a journal as being written until the returned function is called or the tab dies. */
  hold(journalId: string): () => void {
    this.#own.add(journalId)
    let release: () => void = () => undefined
    const released = new Promise<void>((resolve) => {
      release = resolve
    })
    locks()
      ?.request(this.#prefix + journalId, () => released)
      .catch(() => undefined)
    return () => {
      this.#own.delete(journalId)
      release()
    }
  }

  async held(): Promise<ReadonlySet<string>> {
    const snapshot = await locks()
      ?.query()
      .catch(() => undefined)
    const names = snapshot?.held?.map(({ name }) => name ?? '') ?? []
    const elsewhere = names
      .filter((name) => name.startsWith(this.#prefix))
      .map((name) => name.slice(this.#prefix.length))
    return new Set([...this.#own, ...elsewhere])
  }

  get #prefix(): string {
    return `${this.databaseName}/journal/`
  }
}

/** Absent in old browsers; then only this tab's journals are known. */
function locks(): LockManager | undefined {
  return globalThis.navigator?.locks
}
