import { AXES, type SampleBlock } from '../../shared/model/sample'
import { RECORD } from '../../shared/words/en/record'

/** Width of the picture in time. */
const SPAN_MS = 4000
/** Axes are told apart by their dash: x full, y dashed, z dotted. */
const DASHES = [[], [7, 4], [1.5, 3.5]] as const
const LABEL_HEIGHT = 11
const AXIS_LABELS = ['x', 'y', 'z'] as const

interface LaneOptions {
  /** 0 acceleration, 3 turning. */
  first: 0 | 3
  /** Full height either way, in the unit; the first one that holds the motion is taken. */
  scales: readonly number[]
  label: (scale: number) => string
}

const LANES: LaneOptions[] = [
  { first: 0, scales: [20, 40, 80, 160], label: RECORD.accelerationLane },
  { first: 3, scales: [125, 250, 500, 1000, 2000], label: RECORD.turningLane },
]

/** Draws two lanes, acceleration above turning, newest at the right. */
export function drawTrace(canvas: HTMLCanvasElement, block: SampleBlock): void {
  const { clientWidth: width, clientHeight: height } = canvas
  const ratio = devicePixelRatio
  if (canvas.width !== Math.round(width * ratio) || canvas.height !== Math.round(height * ratio)) {
    canvas.width = Math.round(width * ratio)
    canvas.height = Math.round(height * ratio)
  }
  const pen = canvas.getContext('2d')
  if (pen === null) return
  const style = getComputedStyle(canvas)
  pen.setTransform(ratio, 0, 0, ratio, 0, 0)
  pen.clearRect(0, 0, width, height)
  pen.font = `12px ${style.fontFamily}`
  pen.lineJoin = 'round'
  for (const [index, lane] of LANES.entries()) {
    pen.save()
    pen.translate(0, (index * height) / LANES.length)
    drawLane(pen, block, lane, {
      width,
      height: height / LANES.length,
      ink: style.color,
      faint: style.getPropertyValue('--text-faint'),
      line: style.getPropertyValue('--line'),
    })
    pen.restore()
  }
}

interface Field {
  width: number
  height: number
  ink: string
  faint: string
  line: string
}

function drawLane(
  pen: CanvasRenderingContext2D,
  { tMs, values }: SampleBlock,
  { first, scales, label }: LaneOptions,
  field: Field,
): void {
  const { width, height } = field
  const middle = height / 2
  const right = width - 14
  const newest = tMs[tMs.length - 1] ?? 0
  const scale = scaleFor(values, first, scales)
  pen.strokeStyle = field.line
  pen.lineWidth = 1
  pen.beginPath()
  pen.moveTo(0, middle)
  pen.lineTo(right, middle)
  pen.stroke()
  pen.fillStyle = field.faint
  pen.fillText(label(scale), 8, 16)
  if (tMs.length === 0) return
  pen.strokeStyle = field.ink
  pen.lineWidth = 1.4
  const ends: Label[] = []
  for (const [axis, dash] of DASHES.entries()) {
    const yAt = (row: number) =>
      middle - ((values[row * AXES + first + axis] ?? 0) / scale) * (middle - 4)
    pen.setLineDash([...dash])
    pen.beginPath()
    for (const [row, time] of tMs.entries()) {
      pen.lineTo(right - ((newest - time) / SPAN_MS) * right, yAt(row))
    }
    pen.stroke()
    ends.push({ text: AXIS_LABELS[axis] ?? '', y: yAt(tMs.length - 1) + 4 })
  }
  pen.setLineDash([])
  for (const { text, y } of spreadLabels(ends)) pen.fillText(text, right + 4, y)
}

interface Label {
  text: string
  y: number
}

/** Labels in order of height, moved apart where they would cover one another. */
export function spreadLabels(labels: Label[]): Label[] {
  const sorted = labels.map((label) => ({ ...label })).sort((a, b) => a.y - b.y)
  const lowest = sorted[sorted.length - 1]?.y ?? 0
  for (const [index, label] of sorted.entries()) {
    const above = sorted[index - 1]
    if (above !== undefined) label.y = Math.max(label.y, above.y + LABEL_HEIGHT)
  }
  // What was pushed down is shared out to both sides.
  const pushed = (sorted[sorted.length - 1]?.y ?? 0) - lowest
  return sorted.map(({ text, y }) => ({ text, y: y - pushed / 2 }))
}

function scaleFor(values: Float32Array, first: number, scales: readonly number[]): number {
  let largest = 0
  for (let at = first; at < values.length; at += AXES) {
    for (let axis = 0; axis < 3; axis++)
      largest = Math.max(largest, Math.abs(values[at + axis] ?? 0))
  }
  return scales.find((scale) => scale >= largest) ?? scales[scales.length - 1] ?? 1
}
