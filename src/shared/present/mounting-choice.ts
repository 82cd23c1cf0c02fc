import type { AxisName, Matrix3, Target } from '../model/target'
import { tipInPhone } from '../target/board'
import { MOUNTINGS, type Mounting } from '../target/mountings'

/** A prop axis with its sign, such as '+y' or '-x'. */
export type SignedAxis = string

/** All six, in the order they are offered. */
export const SIGNED_AXES: readonly SignedAxis[] = ['+x', '-x', '+y', '-y', '+z', '-z']

/** Prop axes behind board x, y and z, for an axis-parallel mounting; null for any other matrix. */
export function mountingAxes(matrix: Matrix3): [SignedAxis, SignedAxis, SignedAxis] | null {
  const found = MOUNTINGS.find((mounting) => mounting.matrix.every((v, i) => v === matrix[i]))
  return found === undefined ? null : axesOf(found)
}

/** Prop axes that board y can still lie along when board x lies along `boardX`: four of them. */
export function choicesForY(boardX: SignedAxis): SignedAxis[] {
  return SIGNED_AXES.filter((axis) => axis[1] !== boardX[1])
}

/**
 * The one mounting with board x and board y along these prop axes; board z follows by the right
 * hand. When both lie along one axis, y gives way to the first free one.
 */
export function mountingFrom(boardX: SignedAxis, boardY: SignedAxis): Mounting {
  const y = boardY[1] === boardX[1] ? (choicesForY(boardX)[0] ?? boardY) : boardY
  const found = MOUNTINGS.find((mounting) => mounting.key.startsWith(boardX + y))
  return found ?? (MOUNTINGS[0] as Mounting)
}

function axesOf(mounting: Mounting): [SignedAxis, SignedAxis, SignedAxis] {
  const { key } = mounting
  return [key.slice(0, 2), key.slice(2, 4), key.slice(4, 6)]
}

/** The target with another mounting. Its long axis stays where it was in the prop, as nearly as can be. */
export function remount(target: Target, mounting: Matrix3): Target {
  const tip = tipInPhone(target)
  const names: AxisName[] = ['x', 'y', 'z']
  const along = names.map((_, row) =>
    Math.abs(tip.reduce((sum, part, k) => sum + part * (mounting[3 * row + k] ?? 0), 0)),
  )
  const longAxis = names[along.indexOf(Math.max(...along))] ?? target.longAxis
  return { ...target, mounting, longAxis }
}

/** Nine numbers from text, parted by spaces, commas, semicolons or lines; null when not nine. */
export function parseMatrix(text: string): Matrix3 | null {
  const parts = text
    .replaceAll('−', '-')
    .split(/[\s,;[\]]+/)
    .filter((part) => part !== '')
  const values = parts.map(Number)
  if (values.length !== 9 || !values.every(Number.isFinite)) return null
  return values as unknown as Matrix3
}

/** Three rows of three, as parseMatrix reads them. */
export function matrixText(matrix: Matrix3): string {
  const rows = [0, 3, 6].map((at) => matrix.slice(at, at + 3).map((v) => Number(v.toFixed(6))))
  return rows.map((row) => row.join('  ')).join('\n')
}
