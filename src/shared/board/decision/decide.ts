import { type Core, CoreError, type CoreEvent } from '../../core/core'
import { encodeModel } from '../../format/model-bytes'
import type { RecogniserModel } from '../../model/recogniser-model'
import { fail, ok, type Result } from '../../model/result'
import { AXES } from '../../model/sample'
import type { Target } from '../../model/target'
import { BOARD_DECISION } from '../../words/en/board-decision-trouble'
import type { BoardLog } from '../log/board-log'
import { boardCounts } from './board-counts'

/** What the core makes of a board's own samples; indices count rows of the log. */
export interface BoardDecision {
  events: CoreEvent[]
  samples: number
}

/**
 * Runs a board log through the model as the board does: no resampling, no turning, sample by sample.
 * Codes: those of boardCounts, 'decide/model' when the core refuses, 'decide/button'
 * for a model cut by a button, of which a log says nothing.
 */
export function decide(
  core: Core,
  model: RecogniserModel,
  target: Target,
  log: BoardLog,
): Result<BoardDecision> {
  if (model.button) return fail('decide/button', BOARD_DECISION.cutByButton)
  const counts = boardCounts(log, target)
  if (!counts.ok) return counts
  try {
    core.load(encodeModel(model))
    return ok({ events: core.push(counts.value), samples: counts.value.length / AXES })
  } catch (error) {
    if (!(error instanceof CoreError)) throw error
    return fail('decide/model', BOARD_DECISION.modelRefused(error.message))
  }
}
