import { useEffect } from 'preact/hooks'

/** A lock that was refused or taken away is asked for again after this long. */
const AGAIN_MS = 15_000

/**
 * Keeps the screen on while `active`. The system drops the lock when the page hides, and may drop or
 * refuse it as with a low battery; it is asked for again when the page shows and from time to time.
 */
export function useWakeLock(active: boolean): void {
  useEffect(() => {
    if (!active || navigator.wakeLock === undefined) return
    let lock: WakeLockSentinel | null = null
    let asking = false
    let wanted = true
    const acquire = async () => {
      if (asking || document.visibilityState !== 'visible' || lock?.released === false) return
      asking = true
      try {
        const acquired = await navigator.wakeLock.request('screen')
        if (wanted) lock = acquired
        else await acquired.release()
      } catch {
        // Refused for now: what runs goes on, the screen may sleep.
      } finally {
        asking = false
      }
    }
    const onVisible = () => void acquire()
    void acquire()
    document.addEventListener('visibilitychange', onVisible)
    const timer = setInterval(onVisible, AGAIN_MS)
    return () => {
      wanted = false
      clearInterval(timer)
      document.removeEventListener('visibilitychange', onVisible)
      void lock?.release()
    }
  }, [active])
}
