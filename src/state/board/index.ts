import type { SerialPortLike } from '../../board'
import type { Result } from '../../shared/model/result'
import type { Target } from '../../shared/model/target'
import { Bench, type BenchState } from './bench'
import { type BoardLink, createBoardLink } from './link'

export type { BenchState, LoggingState } from './bench'
export type { BoardLink, LinkState } from './link'

/** Real hardware beside the app: the link to it and what it logged at the bench. */
export interface BoardState {
  link: BoardLink
  bench: BenchState
}

export function createBoardState(
  target: () => Target | null,
  choose?: () => Promise<Result<SerialPortLike>>,
): BoardState {
  const link = createBoardLink(target, choose)
  return { link, bench: new Bench(target, link) }
}
