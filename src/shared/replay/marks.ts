import { CORE_PHASES } from '../core/core'
import type { Replay } from '../model/replay'

/** Samples at which the core took its steps towards one decision. */
export interface DecisionMarks {
  /** Motion had stayed above the start long enough: the segment was opened, from `start` on. */
  armed: number
  /** First sample of the segment, and one past its last. */
  start: number
  end: number
  /** Rest was sure: the segment was compared. */
  decided: number
}

const MOVING = CORE_PHASES.indexOf('moving')

/** Where each movement of a replay armed the core, was cut and was decided. */
export function decisionMarks({ events, phase }: Replay): DecisionMarks[] {
  return events.map(({ start, end }) => {
    const armed = phase.indexOf(MOVING, start)
    // The sample that brings a decision leaves the phase; one that a button ends has no such sample.
    let decided = end - 1
    while (decided < phase.length - 1 && phase[decided] === MOVING) decided++
    return { armed: armed < 0 || armed >= end ? start : armed, start, end, decided }
  })
}
