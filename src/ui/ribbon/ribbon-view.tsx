import { useId, useMemo } from 'preact/hooks'
import { ribbonShape } from '../../shared/ribbon/outline'
import type { Ribbon, RibbonPoint } from '../../shared/ribbon/ribbon'

export interface RibbonViewProps {
  ribbon: Ribbon
  /** Width and height, CSS px. */
  size: number
  /** Spoken name; without one the picture is decoration beside text that says the same. */
  label?: string
  /** Draws itself once along its path; at once where reduced motion is asked for. */
  draw?: boolean
}

/** Below this size the halo would hide the path, px. */
const HALO_FROM = 48

/** A gesture's picture: the path of the prop's tip, wide where it is fast, from its start dot on. */
export function RibbonView({ ribbon, size, label, draw = false }: RibbonViewProps) {
  return (
    <svg
      class="ribbon"
      viewBox={`0 0 ${size} ${size}`}
      width={size}
      height={size}
      role="img"
      aria-label={label}
      aria-hidden={label === undefined}
    >
      {ribbon.kind === 'path' && <Path points={ribbon.points} size={size} draw={draw} />}
      {ribbon.kind === 'static' && <Still elevationDeg={ribbon.elevationDeg} size={size} />}
    </svg>
  )
}

function Path({ points, size, draw }: { points: RibbonPoint[]; size: number; draw: boolean }) {
  const shape = useMemo(() => ribbonShape(points, size), [points, size])
  const mask = useId()
  return (
    <>
      {size >= HALO_FROM && <path class="ribbon-halo" d={shape.halo} />}
      {draw && (
        <mask id={mask} maskUnits="userSpaceOnUse" x="0" y="0" width={size} height={size}>
          <path
            class="ribbon-draw"
            d={shape.line}
            pathLength={1}
            stroke-width={shape.fullWidth * 1.5}
          />
        </mask>
      )}
      <path class="ribbon-body" d={shape.body} {...(draw ? { mask: `url(#${mask})` } : {})} />
      <circle class="ribbon-start" cx={shape.start.x} cy={shape.start.y} r={1.5 + size / 48} />
    </>
  )
}

/** Held still: a dot, and a tick where the tip points against the level line. */
function Still({ elevationDeg, size }: { elevationDeg: number; size: number }) {
  const middle = size / 2
  const angle = (elevationDeg * Math.PI) / 180
  const at = (radius: number) =>
    `${middle + radius * Math.cos(angle)} ${middle - radius * Math.sin(angle)}`
  return (
    <>
      <path class="ribbon-level" d={`M${size * 0.12} ${middle}H${size * 0.88}`} />
      <path class="ribbon-tick" d={`M${at(size * 0.1)}L${at(size * 0.38)}`} />
      <circle class="ribbon-body" cx={middle} cy={middle} r={2 + size / 24} />
    </>
  )
}
