import { type Held, type Marks, recall } from '../collect/marks'
import { withWithdrawals } from '../collect/withdraw'
import type { Library } from '../model/library'

/**
 * A library as this phone knows it when a backup of it comes in: as it is here, with what marks remember
 * of a time before it was removed for good. Of one that is not here nothing but that is known.
 * @param here undefined when it is not there
 * @param recordings of the backup; those without a content id may be remembered and not be found
 * @returns undefined when nothing is known
 */
export function remembered(
  here: Library | undefined,
  theirs: Library,
  recordings: Held['recordings'],
  marks: Marks,
  at: string,
): Library | undefined {
  const held = { sessions: theirs.sessions ?? [], recordings }
  const recalled = recall(marks, theirs.id, held, at)
  if (recalled.length === 0) return here
  return withWithdrawals(here ?? { ...theirs, sessions: [], withdrawals: [] }, recalled)
}
