import { useMemo } from 'preact/hooks'
import { type AirTrail, airTrail } from '../../shared/light/air'
import { dashes } from '../../shared/light/flicker'
import { lightOf } from '../../shared/light/library-light'
import { screenCss } from '../../shared/light/screen-colour'
import type { Library, Take } from '../../shared/model/library'
import { tipInPhone } from '../../shared/target/board'
import { LIGHT_ANSWERS } from '../../shared/words/en/light-answers'
import { useApp, useSamples } from '../common'
import { usePlayer, useRun } from './use-player'

const WIDTH = 320
const HEIGHT = 150
const EDGE = 12
/** Longest movement that is drawn. */
const TRAIL_MS = 12_000

/** What the moving prop draws in the air: the trail of a take in the light of each moment. */
export function AirPicture({ library, answerKey }: { library: Library; answerKey: string }) {
  const take = useLatestTake(answerKey)
  const [block] = useSamples(take === undefined ? [] : [take])
  const run = useRun(usePlayer(), library, answerKey, TRAIL_MS)
  const trail = useMemo(
    () =>
      take === undefined || block === undefined || run.length === 0
        ? null
        : airTrail(block, tipInPhone(library.target), take.device.accelSign, run),
    [take, block, run, library.target],
  )
  if (trail === null) return null
  return (
    <figure class="air">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={LIGHT_ANSWERS.air.trail}>
        {segments(trail).map(({ line, colour }, i) => (
          <path key={i} d={line} stroke={colour} />
        ))}
      </svg>
      <figcaption class="small">{speedSentence(library, trail)}</figcaption>
    </figure>
  )
}

/** The take shown for a gesture: its newest. */
function useLatestTake(key: string): Take | undefined {
  const { recordings } = useApp().library
  return recordings.value.find((one): one is Take => one.kind === 'take' && one.gestureId === key)
}

function speedSentence(library: Library, trail: AirTrail): string {
  const { pwmHz } = lightOf(library).led
  const { peakMps } = trail
  return LIGHT_ANSWERS.air.dashes({ peakMps, pwmHz, ...dashes(peakMps, pwmHz, 0.5) })
}

/** Pieces of the trail, each in its own colour, scaled to the picture. */
function segments(trail: AirTrail): { line: string; colour: string }[] {
  const xs = trail.points.map(({ x }) => x)
  const ys = trail.points.map(({ y }) => y)
  const [left, right] = [Math.min(...xs), Math.max(...xs)]
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)]
  const scale = Math.min(
    (WIDTH - 2 * EDGE) / Math.max(0.05, right - left),
    (HEIGHT - 2 * EDGE) / Math.max(0.05, top - bottom),
  )
  const place = ({ x, y }: { x: number; y: number }) =>
    `${(WIDTH / 2 + (x - (left + right) / 2) * scale).toFixed(1)} ${(HEIGHT / 2 - (y - (top + bottom) / 2) * scale).toFixed(1)}`
  return trail.points.slice(1).map((point, i) => ({
    line: `M${place(trail.points[i]!)}L${place(point)}`,
    colour: screenCss(point.colour),
  }))
}
