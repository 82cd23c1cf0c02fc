import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { DecideState } from '../../state/decide'

export const DecideContext = createContext<DecideState | null>(null)

/** Design decisions, on any screen below DecidePlace. */
export function useDecide(): DecideState {
  const decide = useContext(DecideContext)
  if (decide === null) throw new Error('useDecide is for screens inside DecidePlace.')
  return decide
}
