import type { Background } from '../../shared/model/library'
import { durationText } from '../../shared/words/en/numbers'
import { RECORD } from '../../shared/words/en/record'
import { Button, Icon, Mark, route, useApp } from '../common'

/** Background recordings with the way to look into one and to delete it. */
export function BackgroundList({ backgrounds }: { backgrounds: Background[] }) {
  const { library } = useApp()
  return (
    <ul class="background-list">
      {backgrounds.map((one) => (
        <li key={one.id} class="background-row">
          <a href={route('replay', one.id)}>
            {one.testerCode}, {durationText(one.durationMs)}
          </a>
          <span class="small quiet">
            {one.gaps.length > 0 && RECORD.gapCount(one.gaps.length)} {one.note}
          </span>
          {one.source === 'phone' ? <span /> : <Mark kind={one.source} />}
          <Button
            tone="quiet"
            label={RECORD.deleteBackgroundOf(one.testerCode)}
            onClick={() => void library.removeRecordings([one.id])}
          >
            <Icon name="bin" />
          </Button>
        </li>
      ))}
    </ul>
  )
}
