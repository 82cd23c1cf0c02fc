import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { durationText } from '../../shared/words/en/numbers'
import { TRY } from '../../shared/words/en/try'
import { verdict } from '../../shared/words/en/verdict'
import { Section } from '../common'
import type { LiveAnswer } from './answer'

export interface HistoryProps {
  answers: LiveAnswer[]
  model: RecogniserModel
  /** Start sample of the one that is shown in full. */
  shown: number | null
  onShow: (start: number) => void
}

/** Movements listed; older ones help nobody at the bench. */
const SHOWN = 12

/** The last movements, newest first; a tap shows one in full. */
export function History({ answers, model, shown, onShow }: HistoryProps) {
  return (
    <Section title={TRY.lastMovements} aside={<span class="small quiet">{TRY.newestFirst}</span>}>
      <ol class="history">
        {answers.slice(0, SHOWN).map((answer) => {
          const words = verdict(answer.event, model)
          const { start, kind } = answer.event
          return (
            <li key={start}>
              <button
                type="button"
                class="history-row"
                aria-pressed={start === shown}
                onClick={() => onShow(start)}
              >
                <b>{kind === 'gesture' ? words.headline : TRY.none}</b>
                <span>{words.reason}</span>
                <span class="quiet">{durationText(answer.latencyMs)}</span>
              </button>
            </li>
          )
        })}
      </ol>
    </Section>
  )
}
