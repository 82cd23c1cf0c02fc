/** Counts what was found damaged since storage was opened; each item once. */
export class Unreadable {
  readonly #seen = new Set<string>()

  get count(): number {
    return this.#seen.size
  }

  /** Passes a restored item on; notes a damaged one, which stays in the database. */
  note<T>(restored: T | null, kind: string, key: string): T | null {
    if (restored === null) this.#seen.add(`${kind} ${key}`)
    return restored
  }

  /** Restores a list, leaving out what is damaged. */
  sift<T>(values: readonly unknown[], kind: string, restore: (value: unknown) => T | null): T[] {
    return values.flatMap((value, position) => {
      const id = (value as { id?: unknown } | null)?.id
      const item = this.note(restore(value), kind, typeof id === 'string' ? id : `${position}`)
      return item === null ? [] : [item]
    })
  }
}
