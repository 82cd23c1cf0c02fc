import type { CoreEvent } from '../../shared/core/core'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { distanceTable } from '../../shared/present/distances'
import { samplesToMs } from '../../shared/present/sample-time'
import { REPLAY_VIEW } from '../../shared/words/en/replay-view'
import { verdict } from '../../shared/words/en/verdict'
import { DistanceBars } from '../charts'
import { Button, Card } from '../common'

export interface EventCardProps {
  event: CoreEvent
  distances: number[] | null
  model: RecogniserModel
  /** Shows this movement in the traces. */
  onShow: () => void
}

/** One movement that was cut out: the decision, why, and the distances it rests on. */
export function EventCard({ event, distances, model, onShow }: EventCardProps) {
  const words = verdict(event, model)
  const table = distanceTable(event, distances, model)
  const startMs = samplesToMs(event.start, model)
  const lengthMs = samplesToMs(event.end - event.start, model)
  return (
    <Card>
      <div class="event">
        <header class="event-head">
          <div>
            <h2 class="event-name">{words.headline}</h2>
            <p class="small quiet">
              {REPLAY_VIEW.event.span(startMs, startMs + lengthMs, event.end - event.start)}
            </p>
          </div>
          <Button onClick={onShow}>{REPLAY_VIEW.event.show}</Button>
        </header>
        <p>{words.reason}</p>
        {words.roll !== '' && <p>{words.roll}</p>}
        {words.advice !== '' && <p class="quiet">{words.advice}</p>}
        {table !== null && <DistanceBars table={table} />}
      </div>
    </Card>
  )
}
