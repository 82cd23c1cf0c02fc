import { Workbox } from 'workbox-window'

export type OfflineState =
  /** No service worker here: an insecure page, or a private window of some browsers. */
  | 'unsupported'
  /** Files are being kept; without the network the app does not start yet. */
  | 'installing'
  /** Starts without any network. */
  | 'ready'
  /** As 'ready', and a newer version is kept and waits for apply(). */
  | 'update-waiting'
  /** Files could not be kept: host changed them, storage is full, or the network went away. */
  | 'failed'

export interface UpdaterOptions {
  /** False while a recording or a stage show runs: nothing is looked for or changed then. */
  mayUpdate(): boolean
  /** Address of the service worker relative to the page; its folder is the app's scope. */
  scriptUrl?: string
}

export interface Updater {
  state(): OfflineState
  onState(onChange: (state: OfflineState) => void): () => void
  /**
   * Changes to the waiting version and reloads this tab. Other tabs go on with the version they
   * run until they are reloaded. False, and nothing done, when mayUpdate() says no or none waits.
   */
  apply(): boolean
}

/** Looks for a new version at most this often when the page comes back into view. */
const CHECK_EVERY_MS = 3_600_000

/** Keeps the app for offline use and asks before a new version takes over. */
export function createUpdater(options: UpdaterOptions): Updater {
  const store = stateStore()
  const registered = 'serviceWorker' in navigator ? register(options, store) : null
  if (registered === null) store.set('unsupported')
  return {
    state: store.get,
    onState: store.subscribe,
    apply() {
      if (registered === null || store.get() !== 'update-waiting' || !options.mayUpdate()) {
        return false
      }
      reloadOnceControlled()
      registered.messageSkipWaiting()
      return true
    },
  }
}

function register(options: UpdaterOptions, store: StateStore): Workbox {
  const workbox = new Workbox(options.scriptUrl ?? './service-worker.js')
  workbox.addEventListener('waiting', () => store.set('update-waiting'))
  workbox.addEventListener('redundant', () => {
    // Of a first installation; a newer version that fails leaves the one in use as it is.
    if (store.get() === 'installing') store.set('failed')
  })
  workbox.register({ immediate: true }).then(
    () => checkWhenSeen(workbox, options),
    () => store.set('failed'),
  )
  void navigator.serviceWorker.ready.then(() => {
    if (store.get() !== 'update-waiting') store.set('ready')
  })
  return workbox
}

function checkWhenSeen(workbox: Workbox, { mayUpdate }: UpdaterOptions): void {
  let lastMs = Date.now()
  document.addEventListener('visibilitychange', () => {
    const due = Date.now() - lastMs > CHECK_EVERY_MS
    if (document.visibilityState !== 'visible' || !due || !mayUpdate()) return
    lastMs = Date.now()
    // Without a network there is nothing to find, and nothing to say.
    workbox.update().catch(() => undefined)
  })
}

/** Only the tab in which the person asked reloads. */
function reloadOnceControlled(): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {
    once: true,
  })
}

interface StateStore {
  get(): OfflineState
  set(state: OfflineState): void
  subscribe(onChange: (state: OfflineState) => void): () => void
}

function stateStore(): StateStore {
  let current: OfflineState = 'installing'
  const listeners = new Set<(state: OfflineState) => void>()
  return {
    get: () => current,
    set(state) {
      if (state === current) return
      current = state
      for (const listener of listeners) listener(state)
    },
    subscribe(onChange) {
      listeners.add(onChange)
      return () => listeners.delete(onChange)
    },
  }
}
