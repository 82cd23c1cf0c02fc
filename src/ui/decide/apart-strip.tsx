import { DECIDE_GESTURES } from '../../shared/words/en/decide-gestures'
import { axisWord } from '../../shared/words/en/pair-words'
import { useWidth } from '../charts/use-width'

const ROW = 18
const LEFT = 112
/** Standard deviations from which a cell is full. */
const FULL = 6

export interface ApartStripProps {
  /** Points × axes. */
  apart: readonly number[]
  channels: number
}

/** A row an axis, a cell a point: the fuller, the further two gestures stand apart there. */
export function ApartStrip({ apart, channels }: ApartStripProps) {
  const [ref, width] = useWidth<HTMLElement>()
  const points = Math.floor(apart.length / channels)
  const cell = (width - LEFT) / Math.max(1, points)
  const height = channels * ROW
  return (
    <figure class="decide-plot" ref={ref}>
      {width > 0 && (
        <svg
          width={width}
          height={height + 22}
          role="img"
          aria-label={DECIDE_GESTURES.pair.stripLabel}
        >
          {Array.from({ length: channels }, (_, axis) => (
            <text key={axisWord(axis)} x={0} y={axis * ROW + 13}>
              {axisWord(axis)}
            </text>
          ))}
          {apart.map((value, at) => {
            const [point, axis] = [Math.floor(at / channels), at % channels]
            const part = Math.min(1, value / FULL)
            const size = (ROW - 4) * part
            return (
              <rect
                key={at}
                class="decide-cell"
                x={LEFT + point * cell + 0.5}
                y={axis * ROW + 2 + (ROW - 4 - size)}
                width={Math.max(1, cell - 1)}
                height={Math.max(0.5, size)}
              />
            )
          })}
          <text x={LEFT} y={height + 16}>
            {DECIDE_GESTURES.pair.start}
          </text>
          <text x={(LEFT + width) / 2} y={height + 16} text-anchor="middle">
            {DECIDE_GESTURES.pair.full(FULL)}
          </text>
          <text x={width} y={height + 16} text-anchor="end">
            {DECIDE_GESTURES.pair.end}
          </text>
        </svg>
      )}
    </figure>
  )
}
