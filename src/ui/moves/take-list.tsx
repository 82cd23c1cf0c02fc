import { useState } from 'preact/hooks'
import type { Take } from '../../shared/model/library'
import { durationText, plural } from '../../shared/present/numbers'
import { Button, Mark } from '../common'
import { TakeDetail } from './take-detail'

/** Rows shown at once; hundreds of takes would make a slow and useless page. */
const PAGE = 40

/** Takes newest first; a tap on one opens what can be done with it. */
export function TakeList({ takes }: { takes: Take[] }) {
  const [openId, setOpenId] = useState<string | null>(null)
  const [shown, setShown] = useState(PAGE)
  return (
    <>
      <ul class="takes">
        {takes.slice(0, shown).map((take) => {
          const open = take.id === openId
          return (
            <li key={take.id} class="take">
              <TakeRow take={take} open={open} onTap={() => setOpenId(open ? null : take.id)} />
              {open && <TakeDetail take={take} />}
            </li>
          )
        })}
      </ul>
      {takes.length > shown && (
        <Button onClick={() => setShown(shown + PAGE)}>
          Show {Math.min(PAGE, takes.length - shown)} more of {takes.length}
        </Button>
      )}
    </>
  )
}

function TakeRow({ take, open, onTap }: { take: Take; open: boolean; onTap: () => void }) {
  const { trim, gaps, source } = take
  const lengthMs = trim === null ? take.durationMs : trim.endMs - trim.startMs
  return (
    <button type="button" class="take-row" aria-expanded={open} onClick={onTap}>
      <span>{take.testerCode}</span>
      <span class="quiet">{take.hand === 'unknown' ? '' : take.hand}</span>
      <span>
        {durationText(lengthMs)}
        {trim !== null && <span class="quiet"> trimmed</span>}
        {gaps.length > 0 && <span> {plural('gap', gaps.length)}</span>}
      </span>
      <span class="take-row-end">{source === 'phone' ? '' : <Mark kind={source} />}</span>
    </button>
  )
}
