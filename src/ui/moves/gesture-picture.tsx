import type { Take } from '../../shared/model/library'
import { useSamples } from '../common'
import { Ribbon } from '../ribbon'

/** Takes drawn in one picture: enough for the spread to show. */
const TAKES_DRAWN = 16

/** The ribbon of a gesture, or an empty field while it has no takes. */
export function GesturePicture({ takes, name }: { takes: Take[]; name: string }) {
  const blocks = useSamples(takes.slice(0, TAKES_DRAWN))
  return (
    <div class="gesture-picture">
      {blocks.length > 0 && <Ribbon takes={blocks} label={`Ribbon of ${name}`} />}
    </div>
  )
}
