import { GALLERY } from '../../shared/words/en/gallery'
import { Card, Figure, Mark, Notice, Progress } from '../common'
import { LongList } from '../common/long-list'
import { Part, State } from './part'

const idle = () => undefined
const ROWS = Array.from({ length: 200 }, (_, n) => GALLERY.take(n + 1))

/** What tells: notices, progress, figures, cards, lists. */
export function Told() {
  return (
    <>
      <Part name={GALLERY.notice} says={GALLERY.noticeSays}>
        <Notice>
          <p>{GALLERY.noticePlain}</p>
        </Notice>
        <Notice tone="trouble">
          <p>{GALLERY.noticeTrouble}</p>
        </Notice>
      </Part>
      <Part name={GALLERY.progress} says={GALLERY.progressSays}>
        <Progress progress={{ what: GALLERY.progressNone, done: 0, total: 0 }} />
        <Progress progress={{ what: GALLERY.progressSome, done: 5, total: 12 }} cancel={idle} />
      </Part>
      <Part name={GALLERY.figure} says={GALLERY.figureSays}>
        <div class="figures">
          <Figure label={GALLERY.recognised} value="84.7" unit="%" note={GALLERY.rateExample} />
          <Figure label={GALLERY.decision} value="8.7" unit="ms" note={GALLERY.estimated} />
          <Figure label={GALLERY.notMeasured} value={GALLERY.noData} note={GALLERY.noCount} />
        </div>
      </Part>
      <Part name={GALLERY.mark} says={GALLERY.markSays}>
        <div class="buttons">
          <Mark kind="generated" />
          <Mark kind="simulated" count={3} />
          <Mark kind="imported" />
          <Mark kind="board" />
        </div>
      </Part>
      <Part name={GALLERY.card} says={GALLERY.cardSays}>
        <Card>{GALLERY.plain}</Card>
        <Card href="#/gallery">{GALLERY.asALink}</Card>
      </Part>
      <Part name={GALLERY.longList} says={GALLERY.longListSays}>
        <div class="gallery-list">
          <LongList
            items={ROWS}
            keyOf={(row) => row}
            rowPx={44}
            listClass="gallery-rows"
            row={(row) => <a href="#/gallery">{row}</a>}
          />
        </div>
        <State name={GALLERY.emptyState}>
          <p class="quiet">{GALLERY.cardEmpty}</p>
        </State>
      </Part>
    </>
  )
}
