import type { StorageFacts } from './store'

/** What the browser says about room and eviction; zeros and null where it says nothing. */
export async function quotaFacts(): Promise<Omit<StorageFacts, 'unreadableItems'>> {
  const manager = storageManager()
  const [estimate, persisted] = await Promise.all([
    manager?.estimate?.().catch(() => undefined),
    manager?.persisted?.().catch(() => undefined),
  ])
  return {
    usedBytes: estimate?.usage ?? 0,
    quotaBytes: estimate?.quota ?? 0,
    persisted: persisted ?? null,
  }
}

/** True when the browser promises to keep the data, false when not, null when it cannot say. */
export async function requestPersistence(): Promise<boolean | null> {
  const answer = await storageManager()
    ?.persist?.()
    .catch(() => undefined)
  return answer ?? null
}

/** Absent on pages without a secure context. */
function storageManager(): Partial<StorageManager> | undefined {
  return globalThis.navigator?.storage
}
