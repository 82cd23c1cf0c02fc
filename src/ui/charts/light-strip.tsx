import { useMemo } from 'preact/hooks'
import type { Span } from './trace-path'

const TOP = 16
const HEIGHT = 5

export interface LightStripProps {
  light: string[]
  span: Span
  width: number
}

/** Colours over time as one strip; columns of one colour are one rectangle. */
export function LightStrip({ light, span, width }: LightStripProps) {
  return useMemo(
    () => (
      <g>
        {piecesOf(light, span, width).map(({ from, to, colour }) => (
          <rect key={from} x={from} y={TOP} width={to - from} height={HEIGHT} fill={colour} />
        ))}
      </g>
    ),
    [light, span.from, span.to, width],
  )
}

interface Piece {
  from: number
  to: number
  colour: string
}

/** At most one piece a pixel, so that a long recording costs no more than a short one. */
export function piecesOf(light: string[], span: Span, width: number): Piece[] {
  const count = span.to - span.from
  const columns = Math.max(1, Math.min(count, Math.floor(width)))
  const pieces: Piece[] = []
  for (let column = 0; column < columns; column++) {
    const colour = light[span.from + Math.floor((column * count) / columns)] ?? 'none'
    const [from, to] = [(column * width) / columns, ((column + 1) * width) / columns]
    const last = pieces[pieces.length - 1]
    if (last?.colour === colour) last.to = to
    else pieces.push({ from, to, colour })
  }
  return pieces
}
