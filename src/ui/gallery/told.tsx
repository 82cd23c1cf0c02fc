import { Card, Figure, Mark, Notice, Progress } from '../common'
import { LongList } from '../common/long-list'
import { Part, State } from './part'

const idle = () => undefined
const ROWS = Array.from({ length: 200 }, (_, n) => `Take ${n + 1}`)

/** What tells: notices, progress, figures, cards, lists. */
export function Told() {
  return (
    <>
      <Part name="Notice" says="What was seen, what it means, what to do.">
        <Notice>
          <p>Takes have changed since this was measured.</p>
        </Notice>
        <Notice tone="trouble">
          <p>No readings came for two seconds. Lock the phone and unlock it again.</p>
        </Notice>
      </Part>
      <Part name="Progress" says="A long job: what, how far, and the way to stop it.">
        <Progress progress={{ what: 'Nothing done yet', done: 0, total: 0 }} />
        <Progress progress={{ what: 'Training, part 5 of 12', done: 5, total: 12 }} cancel={idle} />
      </Part>
      <Part name="Figure" says="A value, its unit, and what it rests on.">
        <div class="figures">
          <Figure label="Recognised" value="84.7" unit="%" note="61/72, 74.7 to 91.2 %" />
          <Figure label="Decision" value="8.7" unit="ms" note="estimated" />
          <Figure label="Not measured" value="no data" note="n = 0" />
        </div>
      </Part>
      <Part name="Mark" says="Says that what is shown was not moved by a hand.">
        <div class="buttons">
          <Mark kind="generated" />
          <Mark kind="simulated" count={3} />
          <Mark kind="imported" />
          <Mark kind="board" />
        </div>
      </Part>
      <Part name="Card" says="A thing of its own; as a link it is tapped as a whole.">
        <Card>Plain</Card>
        <Card href="#/gallery">As a link</Card>
      </Part>
      <Part name="Long list" says="Only the rows near the window are in the page.">
        <div class="gallery-list">
          <LongList
            items={ROWS}
            keyOf={(row) => row}
            rowPx={44}
            listClass="gallery-rows"
            row={(row) => <a href="#/gallery">{row}</a>}
          />
        </div>
        <State name="empty">
          <p class="quiet">No takes yet: record the first one.</p>
        </State>
      </Part>
    </>
  )
}
