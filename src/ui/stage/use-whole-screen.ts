import { useCallback, useEffect } from 'preact/hooks'

/** Not every browser has it, and TypeScript's types leave it out. */
interface LockableOrientation {
  type: string
  lock?: (orientation: string) => Promise<void>
  unlock?: () => void
}

/**
 * The whole screen and one orientation, where the platform gives them; the show goes on without.
 * @returns takes the whole screen again, to be called from a tap
 */
export function useWholeScreen(): () => void {
  const take = useCallback(() => void takeScreen(), [])
  useEffect(() => {
    take()
    return () => {
      orientation()?.unlock?.()
      if (document.fullscreenElement !== null) void document.exitFullscreen().catch(() => undefined)
    }
  }, [take])
  return take
}

async function takeScreen(): Promise<void> {
  const page = document.documentElement
  if (document.fullscreenElement !== null || page.requestFullscreen === undefined) return
  try {
    await page.requestFullscreen({ navigationUI: 'hide' })
    // Browsers lock the orientation of a whole screen only; a swung phone must not turn its picture.
    await orientation()?.lock?.(orientation()?.type ?? 'any')
  } catch {
    // Refused, as without a tap before it.
  }
}

function orientation(): LockableOrientation | undefined {
  return globalThis.screen?.orientation as LockableOrientation | undefined
}
