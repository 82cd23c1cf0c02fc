import type { StoreNames } from './schema'

/** Stores whose content screens show. Journals and chunks change every second of a recording. */
const SHOWN: readonly StoreNames[] = ['libraries', 'recordings']

/** The word between tabs that something was written. Silent where there is no BroadcastChannel. */
export class OtherTabs {
  readonly #channel: BroadcastChannel | null

  /** onWrite: another tab has stored or deleted something that screens show. */
  constructor(name: string, onWrite: () => void) {
    this.#channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel(name) : null
    this.#channel?.addEventListener('message', onWrite)
  }

  /** To be called after these stores were written here. */
  tell(stores: readonly StoreNames[]): void {
    if (stores.some((name) => SHOWN.includes(name))) this.#channel?.postMessage('written')
  }

  close(): void {
    this.#channel?.close()
  }
}
