import type { SessionRun } from '../../shared/collect/session-run'
import type { Library } from '../../shared/model/library'
import type { Target } from '../../shared/model/target'

/**
 * The target that a session's takes are judged by. A library made on a tester's phone has no target of
 * its own; the plan brings what the designer's sensor can show.
 */
export function judgedBy({ target }: Library, { plan }: SessionRun): Target {
  return { ...target, ...plan.ranges }
}
