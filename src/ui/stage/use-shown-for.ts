import { useCallback, useEffect, useRef, useState } from 'preact/hooks'

/** Something that shows for a while after each call of `show`. */
export function useShownFor(durationMs: number): [boolean, () => void] {
  const [shown, setShown] = useState(false)
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const show = useCallback(() => {
    clearTimeout(timer.current)
    setShown(true)
    timer.current = setTimeout(() => setShown(false), durationMs)
  }, [durationMs])
  useEffect(() => () => clearTimeout(timer.current), [])
  return [shown, show]
}
