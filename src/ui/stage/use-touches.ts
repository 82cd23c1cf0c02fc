import { useEffect } from 'preact/hooks'

/**
 * What hand and keyboard do to the whole stage: Escape leaves, anything else wakes the controls. A
 * long press opens no menu of the browser's.
 */
export function useTouches(onTouch: () => void, onLeave: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') onLeave()
      else onTouch()
    }
    const onMenu = (event: Event) => event.preventDefault()
    addEventListener('keydown', onKey)
    addEventListener('pointerup', onTouch)
    addEventListener('contextmenu', onMenu)
    return () => {
      removeEventListener('keydown', onKey)
      removeEventListener('pointerup', onTouch)
      removeEventListener('contextmenu', onMenu)
    }
  }, [])
}
