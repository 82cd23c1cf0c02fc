/** How long a tab waits before it takes another one for the writer: a reload lets go in less. */
const DECIDE_MS = 500
/** A tab that does not answer within this time is asleep, as phones put tabs to sleep. */
const ANSWER_MS = 1500

export interface PenEvents {
  /** Whether this tab is the one that writes, whenever that is decided or changes. */
  onPen: (isHere: boolean) => void
  /** Whether it may be given away: not while something is recorded here. */
  mayGive: () => boolean
}

export type PenAnswer = 'here' | 'busy'

/**
 * Of several tabs one writes and the others read, so that no tab stores an older view of a library
 * over what another one has just stored. The pen is a Web Lock: it falls to the next tab when its
 * holder is closed or killed. Where there are no locks, every tab writes.
 */
export class Pen {
  readonly #name: string
  readonly #events: PenEvents
  readonly #channel: BroadcastChannel | null
  readonly #stop = new AbortController()
  #isHere: boolean | null = null
  #letGo: () => void = () => undefined
  #decided: Promise<void>
  #settle: () => void = () => undefined
  #answer: (answer: PenAnswer) => void = () => undefined

  constructor(databaseName: string, events: PenEvents) {
    this.#name = `${databaseName}/pen`
    this.#events = events
    this.#decided = new Promise((resolve) => {
      this.#settle = resolve
    })
    const hasLocks = Boolean(globalThis.navigator?.locks)
    this.#channel = hasLocks ? new BroadcastChannel(this.#name) : null
    this.#channel?.addEventListener('message', ({ data }) => this.#hear(data))
    if (!hasLocks) this.#set(true)
    else {
      this.#request()
      setTimeout(() => {
        if (this.#isHere === null) this.#set(false)
      }, DECIDE_MS)
    }
  }

  /** Whether this tab writes; waits for the decision after a start. */
  async isHere(): Promise<boolean> {
    await this.#decided
    return this.#isHere === true
  }

  /**
   * Asks the tab that writes to give the pen to this one; 'busy' while it records. A tab that is
   * asleep records nothing and cannot answer: from it the pen is taken.
   */
  take(): Promise<PenAnswer> {
    if (this.#isHere === true) return Promise.resolve('here')
    return new Promise((resolve) => {
      const asleep = setTimeout(() => this.#request({ steal: true }), ANSWER_MS)
      this.#answer = (answer) => {
        clearTimeout(asleep)
        resolve(answer)
      }
      this.#channel?.postMessage('give')
    })
  }

  close(): void {
    this.#stop.abort()
    this.#letGo()
    this.#channel?.close()
  }

  #request(how: LockOptions = { signal: this.#stop.signal }): void {
    const held = () => {
      this.#set(true)
      this.#answer('here')
      return new Promise<void>((resolve) => {
        this.#letGo = resolve
      })
    }
    // Rejected when it was taken away, and when this tab closes while it waits.
    navigator.locks.request(this.#name, how, held).catch(() => {
      if (this.#stop.signal.aborted || this.#isHere !== true) return
      this.#set(false)
      this.#request()
    })
  }

  #hear(word: unknown): void {
    if (word === 'busy') this.#answer('busy')
    if (word !== 'give' || this.#isHere !== true) return
    if (!this.#events.mayGive()) {
      this.#channel?.postMessage('busy')
      return
    }
    this.#set(false)
    this.#letGo()
    // Behind the tab that asked: it has been waiting in line since it started.
    this.#request()
  }

  #set(isHere: boolean): void {
    this.#isHere = isHere
    this.#settle()
    this.#events.onPen(isHere)
  }
}
