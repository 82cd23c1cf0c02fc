import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { distanceTable } from '../../shared/present/distances'
import { segmenterSentence } from '../../shared/words/en/silence'
import { TRY } from '../../shared/words/en/try'
import { verdict } from '../../shared/words/en/verdict'
import { type Cut, DistanceBars, type EnergyPicture, EnergyTrace } from '../charts'
import { Section, useApp } from '../common'
import { Answer, AnswerDetail, type LiveAnswer } from './answer'
import { History } from './history'
import { Known } from './known'
import { PressButton } from './press-button'

const SHOWN_S = 6

export interface LiveViewProps {
  model: RecogniserModel
  /** What moves the phone when no hand does. */
  beside: ComponentChildren
}

/** Live recognition: the answer, why, and what the recogniser sees right now. */
export function LiveView({ model, beside }: LiveViewProps) {
  const { live } = useApp()
  const answers = live.events.value
  const [chosen, setChosen] = useState<number | null>(null)
  const shown = answers.find((answer) => answer.event.start === chosen) ?? answers[0]
  return (
    <div class="live-box">
      <div class="live">
        <div class="live-now">
          {shown === undefined ? (
            <div class="live-wait">
              <p>{TRY.makeOne}</p>
              <Known />
            </div>
          ) : (
            <Answer answer={shown} model={model} />
          )}
          {model.button && <PressButton />}
          <Energy model={model} answers={answers} />
          {beside}
        </div>
        <div class="live-why">
          {shown !== undefined && (
            <>
              <AnswerDetail answer={shown} model={model} />
              <Distances answer={shown} model={model} />
            </>
          )}
          {answers.length > 1 && (
            <History
              answers={answers}
              model={model}
              shown={shown?.event.start ?? null}
              onShow={(start) => setChosen(start === answers[0]?.event.start ? null : start)}
            />
          )}
        </div>
      </div>
    </div>
  )
}

/** Redrawn with every update of the worker, apart from the rest of the screen. */
function Energy({ model, answers }: { model: RecogniserModel; answers: LiveAnswer[] }) {
  const { live } = useApp()
  const { segmenter, board } = model
  const energy = live.energy.value
  const sentence =
    model.button && live.phase.value === 'idle'
      ? TRY.cutByButton
      : segmenterSentence(energy, live.phase.value, segmenter)
  const picture: EnergyPicture = {
    energy,
    end: live.sampleCount.value,
    shown: Math.round((SHOWN_S * board.rateMillihertz) / 1000),
    onThreshold: segmenter.onThreshold,
    offThreshold: segmenter.offThreshold,
    cuts: answers.map((answer): Cut => {
      const { start, end, kind } = answer.event
      return {
        start,
        end,
        text: kind === 'reject' ? TRY.none : verdict(answer.event, model).headline,
        rejected: kind === 'reject',
      }
    }),
  }
  return (
    <figure class="live-energy">
      <EnergyTrace picture={picture} label={TRY.energyDescribed(SHOWN_S, sentence)} />
      <figcaption>
        <span class="small quiet">{TRY.energy(SHOWN_S)}</span>
        <span>{sentence}</span>
      </figcaption>
    </figure>
  )
}

function Distances({ answer, model }: { answer: LiveAnswer; model: RecogniserModel }) {
  const table = distanceTable(answer.event, answer.gestureDistances, model)
  return (
    <Section title={TRY.distances}>
      {table === null ? <p class="quiet">{TRY.notCompared}</p> : <DistanceBars table={table} />}
    </Section>
  )
}
