import { useEffect, useState } from 'preact/hooks'

const WATCHED = [
  '(prefers-color-scheme: light)',
  '(prefers-contrast: more)',
  '(forced-colors: active)',
]

/** Changes when the system changes colours: for what is drawn by hand and must be drawn again. */
export function useThemeTurns(): number {
  const [turns, setTurns] = useState(0)
  useEffect(() => {
    const turn = () => setTurns((count) => count + 1)
    const queries = WATCHED.map((query) => matchMedia(query))
    for (const query of queries) query.addEventListener('change', turn)
    return () => {
      for (const query of queries) query.removeEventListener('change', turn)
    }
  }, [])
  return turns
}
