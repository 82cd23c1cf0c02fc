import type { Core, TeachAnswer } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import { type CutInput, cutTake } from '../training/cut-take'
import { pressedSpan } from '../training/press'
import { wasCompared } from '../training/stream'

/** What came of teaching with takes that were recorded before. */
export interface Teaching {
  /** Number of the gesture in events; known from now on when `answer` says 'done'. */
  gesture: number
  /** After the last take the session asked for. */
  answer: TeachAnswer
}

/**
 * Teaches the loaded core as the prop does: each take runs through the whole stream, and the movement
 * that counts in it elsewhere too goes to the session. Takes without one are passed over.
 * @param core loaded with `model`, with teaching open
 * @param gesture index of the one whose place is taken, null for one more
 * @returns null when the takes run out before the session has all it asks for
 */
export function teachTakes(
  core: Core,
  model: RecogniserModel,
  gesture: number | null,
  takes: readonly CutInput[],
): Teaching | null {
  const number = core.teach(gesture)
  for (const take of takes) {
    const answer = teachTake(core, model, take)
    if (answer === null || answer.status === 'more') continue
    return { gesture: number, answer }
  }
  core.cancelTeaching()
  return null
}

/** Null when there is no movement in the take that can be compared. */
function teachTake(core: Core, model: RecogniserModel, take: CutInput): TeachAnswer | null {
  const { movement } = cutTake(core, take, model)
  if (movement === null || !wasCompared(movement.event)) return null
  const { end } = movement.event
  const span = model.button ? pressedSpan(core, take, model) : null
  core.reset()
  if (span === null) {
    // Up to its end only movements before it are decided, and none of them is given to teaching.
    core.push(take.counts.subarray(0, end * AXES))
  } else {
    core.push(take.counts.subarray(0, span.from * AXES))
    core.button(true)
    core.push(take.counts.subarray(span.from * AXES, span.to * AXES))
    core.button(false)
  }
  const rest = take.counts.subarray(end * AXES)
  for (let at = 0; at < rest.length; at += AXES) {
    if (core.push(rest.subarray(at, at + AXES)).length > 0) return core.teachEvent()
  }
  return null
}
