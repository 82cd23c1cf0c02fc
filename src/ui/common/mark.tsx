import { COMMON } from '../../shared/words/en/common'

export interface MarkProps {
  kind: 'generated' | 'simulated' | 'imported' | 'board'
  /** How many of what stands beside it, where not all. */
  count?: number
}

/** Says that what is shown was not moved by a hand: shown wherever such data appears. */
export function Mark({ kind, count }: MarkProps) {
  const mark = COMMON.marks[kind]
  return <span class="mark">{count === undefined ? mark : COMMON.markCount(count, mark)}</span>
}
