import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { BoardState } from '../../state/board'

export const BoardContext = createContext<BoardState | null>(null)

/** The board beside the app, on any screen below BoardPlace. */
export function useBoard(): BoardState {
  const board = useContext(BoardContext)
  if (board === null) throw new Error('useBoard is for screens inside BoardPlace.')
  return board
}
