import type { AxisName, Matrix3 } from '../../shared/model/target'
import { TARGET_FORMS } from '../../shared/words/en/target-forms'

type Vector = [number, number, number]

const NAMES: AxisName[] = ['x', 'y', 'z']

/** Cabinet projection of prop axes: x to the right, y up, z towards the viewer. */
function project([x, y, z]: Vector, scale: number): [number, number] {
  return [(x - 0.5 * z) * scale, (-y + 0.42 * z) * scale]
}

/** Row of the mounting: where a board axis points, in prop axes. */
function boardAxis(mounting: Matrix3, row: number): Vector {
  return [mounting[3 * row] ?? 0, mounting[3 * row + 1] ?? 0, mounting[3 * row + 2] ?? 0]
}

export interface MountingPictureProps {
  mounting: Matrix3
  longAxis: AxisName
}

/** The prop with its axes beside the board as it sits in it: same view, so directions compare. */
export function MountingPicture({ mounting, longAxis }: MountingPictureProps) {
  const axes = [0, 1, 2].map((row) => boardAxis(mounting, row))
  return (
    <svg class="mounting" viewBox="0 0 340 190" role="img" aria-label={describe(axes)}>
      <g transform="translate(92 96)">
        <rect class="mounting-body" x="-24" y="-80" width="48" height="152" rx="10" />
        <Triad axes={unitAxes()} scale={44} />
      </g>
      <text x="92" y="184" text-anchor="middle">
        {TARGET_FORMS.propHeldLikeThePhone}
      </text>
      <g transform="translate(250 96)">
        <BoardPlate axes={axes} />
        <Triad axes={axes} scale={52} strong={NAMES.indexOf(longAxis)} />
      </g>
      <text x="250" y="184" text-anchor="middle">
        {TARGET_FORMS.boardInTheProp}
      </text>
    </svg>
  )
}

function unitAxes(): Vector[] {
  return [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]
}

function Triad({ axes, scale, strong }: { axes: Vector[]; scale: number; strong?: number }) {
  return (
    <>
      {axes.map((axis, index) => {
        const [x, y] = project(axis, scale)
        const [textX, textY] = project(axis, scale + 16)
        const name = NAMES[index]
        return (
          <g key={name} class={index === strong ? 'axis axis-long' : 'axis'}>
            <line x1="0" y1="0" x2={x} y2={y} />
            <path d={arrowHead(x, y)} />
            <text x={textX} y={textY + 5} text-anchor="middle">
              {name}
            </text>
          </g>
        )
      })}
    </>
  )
}

function arrowHead(x: number, y: number): string {
  const length = Math.hypot(x, y) || 1
  const [dx, dy] = [x / length, y / length]
  const wing = (side: number) => `${x - 8 * dx - side * 4 * dy} ${y - 8 * dy + side * 4 * dx}`
  return `M${wing(1)}L${x} ${y}L${wing(-1)}`
}

/** The board's plate lies along its x and y; the dot marks its corner at +x +y. */
function BoardPlate({ axes }: { axes: Vector[] }) {
  const [ax = [1, 0, 0], ay = [0, 1, 0]] = axes
  const corner = (sx: number, sy: number) =>
    project(
      [sx * ax[0] + sy * ay[0], sx * ax[1] + sy * ay[1], sx * ax[2] + sy * ay[2]] as Vector,
      26,
    )
  const outline = [corner(1, 1), corner(-1, 1), corner(-1, -1), corner(1, -1)]
  const [dotX, dotY] = corner(0.72, 0.72)
  return (
    <>
      <polygon class="mounting-board" points={outline.map((point) => point.join(',')).join(' ')} />
      <circle class="mounting-dot" cx={dotX} cy={dotY} r="2.5" />
    </>
  )
}

function describe(axes: Vector[]): string {
  const parts = axes.map((axis, index) => {
    const terms = axis.flatMap((value, k) =>
      value === 0 ? [] : [`${value.toFixed(2)} ${NAMES[k]}`],
    )
    return TARGET_FORMS.boardAlongProp(NAMES[index] ?? '', terms.join(' + '))
  })
  return parts.join('; ')
}
