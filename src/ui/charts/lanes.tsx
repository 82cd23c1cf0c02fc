import { useMemo } from 'preact/hooks'
import { CHARTS } from '../../shared/words/en/charts'
import type { Cut } from './cuts'
import { LightStrip } from './light-strip'
import { ticks } from './scale'
import { type Span, tracePath } from './trace-path'
import { useWidth } from './use-width'

/** One trace with its own vertical scale. */
export interface Lane {
  name: string
  unit: string
  heightPx: number
  at: (sample: number) => number
  /** Pixel of a value, 0 at the top. */
  yOf: (value: number, heightPx: number) => number
  /** Level lines from the top down, with a word each, such as thresholds; '' for none. */
  levels: { value: number; text: string; dashed: boolean }[]
  /** What the height spans, written at the right end; empty when levels say it. */
  reach: string
  /** Value as it is written beside the name. */
  format: (value: number) => string
  /** Another recording's trace behind it, from its first sample to one past its last. */
  ghost?: { at: (sample: number) => number; from: number; to: number }
  /** Instants within this lane, with a word each. */
  marks?: { sample: number; text: string }[]
}

export interface LanesProps {
  lanes: Lane[]
  rateHz: number
  span: Span
  cuts: Cut[]
  /** Samples from here on were not recorded; marked. */
  measuredTo: number
  /** Sample under the cursor. */
  cursor: number
  onCursor: (sample: number) => void
  label: string
  /** Colour at each sample, as a strip over all lanes. */
  light?: string[]
}

const TOP = 22
const BOTTOM = 20
/** More marks than this would cover each other. */
const MOST_MARKS = 8
/** Room for a lane's name and value above its trace. */
const NAME = 17

/** Traces over one time axis, with cut marks through all of them and one cursor. */
export function Lanes(props: LanesProps) {
  const { lanes, rateHz, span, cuts, measuredTo, cursor, onCursor, label, light = [] } = props
  const [ref, width] = useWidth<HTMLDivElement>()
  const tops = laneTops(lanes)
  const height = TOP + lanes.reduce((sum, lane) => sum + NAME + lane.heightPx, 0) + BOTTOM
  const count = Math.max(span.to - span.from - 1, 1)
  const xOf = (sample: number) => ((sample - span.from) / count) * width
  // Drawn anew only when they change, and not with each step of the cursor.
  const cutMarks = useMemo(
    () => <Cuts cuts={cuts} xOf={xOf} span={span} height={height - BOTTOM} />,
    [cuts, span.from, span.to, width, height],
  )
  const follow = (event: PointerEvent) => {
    if (event.pointerType === 'mouse' && event.buttons === 0) return
    const box = (event.currentTarget as Element).getBoundingClientRect()
    const share = Math.min(Math.max((event.clientX - box.left) / box.width, 0), 1)
    onCursor(Math.round(span.from + share * count))
  }
  return (
    <div class="lanes" ref={ref}>
      {width > 0 && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={label}
          onPointerDown={follow}
          onPointerMove={follow}
        >
          {cutMarks}
          {light.length > 0 && <LightStrip light={light} span={span} width={width} />}
          {lanes.map((lane, index) => (
            <LaneView
              key={lane.name}
              lane={lane}
              top={tops[index] ?? 0}
              span={span}
              width={width}
              cursor={cursor}
              xOf={xOf}
            />
          ))}
          {measuredTo < span.to && (
            <g class="lanes-end">
              <line x1={xOf(measuredTo)} x2={xOf(measuredTo)} y1={TOP - 4} y2={height - BOTTOM} />
              <text x={xOf(measuredTo) + 3} y={12}>
                {CHARTS.restAdded}
              </text>
            </g>
          )}
          <TimeAxis span={span} rateHz={rateHz} xOf={xOf} width={width} y={height - BOTTOM} />
          {cursor >= span.from && cursor < span.to && (
            <line
              class="lanes-cursor"
              x1={xOf(cursor)}
              x2={xOf(cursor)}
              y1={TOP - 4}
              y2={height - BOTTOM}
            />
          )}
        </svg>
      )}
    </div>
  )
}

function laneTops(lanes: Lane[]): number[] {
  let top = TOP
  return lanes.map((lane) => {
    const own = top + NAME
    top += NAME + lane.heightPx
    return own
  })
}

interface LaneViewProps {
  lane: Lane
  top: number
  span: Span
  width: number
  cursor: number
  xOf: (sample: number) => number
}

function LaneView({ lane, top, span, width, cursor, xOf }: LaneViewProps) {
  const still = useMemo(
    () => <StillLane lane={lane} span={span} width={width} xOf={xOf} />,
    [lane, span.from, span.to, width],
  )
  return (
    <g transform={`translate(0 ${top})`}>
      {still}
      <text x={2} y={-5}>
        {lane.name} <tspan class="lane-value">{lane.format(lane.at(cursor))}</tspan> {lane.unit}
      </text>
      <text x={width - 2} y={-5} text-anchor="end">
        {lane.reach}
      </text>
    </g>
  )
}

/** What of a lane does not follow the cursor. */
function StillLane({ lane, span, width, xOf }: Omit<LaneViewProps, 'top' | 'cursor'>) {
  const path = tracePath(lane.at, span, width, (value) => lane.yOf(value, lane.heightPx))
  const ghost = ghostOf(lane, span, width)
  const marks = (lane.marks ?? []).filter(({ sample }) => sample >= span.from && sample < span.to)
  return (
    <>
      {lane.levels.map((level) => {
        const y = lane.yOf(level.value, lane.heightPx)
        return (
          <line
            key={level.value}
            class={level.dashed ? 'lane-level lane-level-dashed' : 'lane-level'}
            x1={0}
            x2={width}
            y1={y}
            y2={y}
          />
        )
      })}
      {ghost !== null && (
        <path class="lane-ghost" d={ghost.path} transform={`translate(${ghost.x} 0)`} />
      )}
      <path class="lane-trace" d={path} />
      {marks.length <= MOST_MARKS &&
        marks.map(({ sample, text }) => (
          <g key={`${sample} ${text}`} class="lane-mark">
            <path d={`M${xOf(sample)} ${lane.heightPx}v-14`} />
            <text x={xOf(sample) + 3} y={lane.heightPx - 4}>
              {text}
            </text>
          </g>
        ))}
      {levelLabels(lane).map((label) => (
        <text key={label.y} x={width - 2} y={label.y} text-anchor="end">
          {label.text}
        </text>
      ))}
    </>
  )
}

/** The ghost's path within the span, and where it begins. */
function ghostOf(lane: Lane, span: Span, width: number): { path: string; x: number } | null {
  const { ghost } = lane
  if (ghost === undefined) return null
  const from = Math.max(ghost.from, span.from)
  const to = Math.min(ghost.to, span.to)
  if (to - from < 2) return null
  const step = width / Math.max(span.to - span.from - 1, 1)
  const yOf = (value: number) => lane.yOf(value, lane.heightPx)
  const path = tracePath(ghost.at, { from, to }, (to - from - 1) * step, yOf)
  return { path, x: (from - span.from) * step }
}

/** One label above each level line, or one for both where they would run into each other. */
function levelLabels(lane: Lane): { text: string; y: number }[] {
  const labels: { text: string; y: number }[] = []
  for (const level of lane.levels) {
    if (level.text === '') continue
    const y = lane.yOf(level.value, lane.heightPx) - 3
    const last = labels[labels.length - 1]
    if (last !== undefined && y - last.y < 15) last.text += `, ${level.text}`
    else labels.push({ text: level.text, y })
  }
  return labels
}

interface CutsProps {
  cuts: Cut[]
  xOf: (sample: number) => number
  span: Span
  height: number
}

function Cuts({ cuts, xOf, span, height }: CutsProps) {
  const seen = cuts.filter((cut) => cut.end > span.from && cut.start < span.to)
  return (
    <>
      {seen.map((cut) => {
        const from = xOf(Math.max(cut.start, span.from))
        const to = xOf(Math.min(cut.end, span.to - 1))
        return (
          <g key={cut.start} class={cut.rejected ? 'cut cut-rejected' : 'cut'}>
            <rect x={from} y={TOP - 4} width={Math.max(to - from, 1)} height={height - TOP + 4} />
            <path d={`M${from} ${TOP - 4}V${height}M${to} ${TOP - 4}V${height}`} />
            {to - from > 28 && (
              <text x={from + 3} y={12}>
                {shortened(cut.text, to - from)}
              </text>
            )}
          </g>
        )
      })}
    </>
  )
}

/** About the width of a letter, px. */
const LETTER = 7

/** A name cut to its movement, which may pass it by a few letters. */
function shortened(text: string, widthPx: number): string {
  const letters = Math.max(10, Math.floor(widthPx / LETTER))
  return text.length <= letters ? text : `${text.slice(0, letters - 1)}…`
}

interface TimeAxisProps {
  span: Span
  rateHz: number
  xOf: (sample: number) => number
  width: number
  y: number
}

function TimeAxis({ span, rateHz, xOf, width, y }: TimeAxisProps) {
  const seconds = ticks(span.from / rateHz, (span.to - 1) / rateHz, Math.max(2, width / 80))
  return (
    <g class="lanes-axis">
      <line x1={0} x2={width} y1={y} y2={y} />
      {seconds.map((second) => {
        const x = xOf(second * rateHz)
        const anchor = x < 16 ? 'start' : x > width - 24 ? 'end' : 'middle'
        return (
          <g key={second}>
            <line x1={x} x2={x} y1={y} y2={y + 4} />
            <text x={x} y={y + 16} text-anchor={anchor}>
              {second} s
            </text>
          </g>
        )
      })}
    </g>
  )
}
