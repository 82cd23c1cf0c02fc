import { useEffect } from 'preact/hooks'

/** Keeps the screen on while `active`. The system drops the lock when the page hides; it comes back. */
export function useWakeLock(active: boolean): void {
  useEffect(() => {
    if (!active || navigator.wakeLock === undefined) return
    let lock: WakeLockSentinel | null = null
    let wanted = true
    const acquire = async () => {
      if (document.visibilityState !== 'visible') return
      try {
        const acquired = await navigator.wakeLock.request('screen')
        if (wanted) lock = acquired
        else await acquired.release()
      } catch {
        // Refused, as with a low battery: recording goes on, the screen may sleep.
      }
    }
    const onVisible = () => void acquire()
    void acquire()
    document.addEventListener('visibilitychange', onVisible)
    return () => {
      wanted = false
      document.removeEventListener('visibilitychange', onVisible)
      void lock?.release()
    }
  }, [active])
}
