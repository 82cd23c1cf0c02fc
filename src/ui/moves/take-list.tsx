import { useState } from 'preact/hooks'
import type { Take } from '../../shared/model/library'
import { GESTURE } from '../../shared/words/en/gesture'
import { durationText } from '../../shared/words/en/numbers'
import { Mark } from '../common'
import { LongList } from '../common/long-list'
import { TakeDetail } from './take-detail'

/** Height of a closed row, px, as moves.css has it. */
const ROW_PX = 49

/** Takes newest first; a tap on one opens what can be done with it. */
export function TakeList({ takes }: { takes: Take[] }) {
  const [openId, setOpenId] = useState<string | null>(null)
  return (
    <LongList
      items={takes}
      keyOf={(take) => take.id}
      kept={openId}
      rowPx={ROW_PX}
      listClass="takes"
      rowClass="take"
      row={(take) => {
        const open = take.id === openId
        return (
          <>
            <TakeRow take={take} open={open} onTap={() => setOpenId(open ? null : take.id)} />
            {open && <TakeDetail take={take} />}
          </>
        )
      }}
    />
  )
}

function TakeRow({ take, open, onTap }: { take: Take; open: boolean; onTap: () => void }) {
  const { trim, gaps, source } = take
  const lengthMs = trim === null ? take.durationMs : trim.endMs - trim.startMs
  return (
    <button type="button" class="take-row" aria-expanded={open} onClick={onTap}>
      <span>{take.testerCode}</span>
      <span class="quiet">{take.hand === 'unknown' ? '' : GESTURE[take.hand]}</span>
      <span>
        {durationText(lengthMs)}
        {trim !== null && <span class="quiet"> {GESTURE.trimmed}</span>}
        {gaps.length > 0 && <span> {GESTURE.gapCount(gaps.length)}</span>}
      </span>
      <span class="take-row-end">{source === 'phone' ? '' : <Mark kind={source} />}</span>
    </button>
  )
}
