import { useState } from 'preact/hooks'
import type { Failure, Result } from '../../shared/model/result'

/**
 * Settings as they are being edited: sound ones are stored at once, wrong ones stay on screen with
 * what is wrong, as fields that belong together are changed one after the other.
 */
export function useDraft<T>(
  stored: T,
  check: (value: T) => Result<unknown>,
  store: (value: T) => Promise<void>,
): [T, Failure | null, (value: T) => void] {
  const [draft, setDraft] = useState<T | null>(null)
  const value = draft ?? stored
  const checked = check(value)
  const change = (next: T) => {
    setDraft(next)
    if (check(next).ok) void store(next).then(() => setDraft((now) => (now === next ? null : now)))
  }
  return [value, checked.ok ? null : checked, change]
}
