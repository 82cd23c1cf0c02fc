import type { SerialPortLike } from '../../board'
import type { Result } from '../../shared/model/result'
import { Bench, type BenchState } from './bench'
import { type BesideParts, type BesidePhone, createBesidePhone } from './beside-phone'
import { type BoardLink, createBoardLink } from './link'

export type { BenchState, LoggingState } from './bench'
export type { BoardLink, LinkState } from './link'

/** Real hardware beside the app: the link to it and what it logged at the bench. */
export interface BoardState {
  link: BoardLink
  bench: BenchState
  beside: BesidePhone
}

export function createBoardState(
  parts: Omit<BesideParts, 'bench'>,
  choose?: () => Promise<Result<SerialPortLike>>,
): BoardState {
  const target = () => parts.shelf.current.value?.target ?? null
  const link = createBoardLink(target, choose)
  const bench = new Bench(target, link)
  return { link, bench, beside: createBesidePhone({ ...parts, bench }) }
}
