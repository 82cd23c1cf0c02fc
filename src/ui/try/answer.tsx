import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { latencySentence } from '../../shared/words/en/latency'
import { verdict } from '../../shared/words/en/verdict'
import type { LiveState } from '../../state/app'
import { GestureRibbon } from '../ribbon'

export type LiveAnswer = LiveState['events']['value'][number]

export interface AnswerProps {
  answer: LiveAnswer
  model: RecogniserModel
}

/** The answer to one movement, large enough to be read from the bench, and the figures behind it. */
export function Answer({ answer, model }: AnswerProps) {
  const { event } = answer
  const words = verdict(event, model)
  const gesture = event.kind === 'gesture' && event.gesture !== null ? event.gesture : null
  const id = gesture === null ? undefined : model.gestures[gesture]?.id
  return (
    <div class={id === undefined ? 'answer answer-none' : 'answer'} role="status">
      {id === undefined ? (
        <NoneMark />
      ) : (
        <GestureRibbon key={event.start} gestureId={id} size={104} draw />
      )}
      <div>
        <h2>{words.headline}</h2>
        <p>{words.reason}</p>
        {words.roll !== '' && <p class="quiet">{words.roll}</p>}
      </div>
    </div>
  )
}

/** What to do about it, and where the time went between the movement's end and the answer. */
export function AnswerDetail({ answer, model }: AnswerProps) {
  const { advice } = verdict(answer.event, model)
  return (
    <div class="answer-detail">
      {advice !== '' && <p>{advice}</p>}
      <p class="small quiet">{latencySentence(answer)}</p>
    </div>
  )
}

function NoneMark() {
  return (
    <svg class="answer-none-mark" viewBox="0 0 104 104" width="104" height="104" aria-hidden="true">
      <path d="M30 30 74 74M74 30 30 74" />
    </svg>
  )
}
