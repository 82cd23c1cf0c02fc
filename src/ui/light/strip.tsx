import type { Run } from '../../shared/light/run'
import { stripGradient } from '../../shared/light/strip'

/** Light over time from left to right, in the screen's colours. Never moves. */
export function Strip({ run, label }: { run: Run; label: string }) {
  return (
    <div
      class="light-strip"
      role="img"
      aria-label={label}
      style={{ background: stripGradient(run) }}
    />
  )
}
