import { useState } from 'preact/hooks'
import type { Warping } from '../../shared/replay/unroll'
import { REPLAY_TRACES } from '../../shared/words/en/replay-traces'
import { tracePath, useWidth } from '../charts'
import { SelectField } from '../common'

const HEIGHT = 150
/** Share of the height that each of the two curves has. */
const HALF = HEIGHT / 2 - 6

export interface PairingProps {
  /** Both length × channels, as they were compared. */
  segment: Int8Array
  template: Int8Array
  channels: string[]
  warping: Warping
  band: number
  /** Point of the segment under the play head; -1 before it. */
  point: number
}

/** One channel of the segment over the same of the template, with a line for each pair of the path. */
export function Pairing(props: PairingProps) {
  const { channels, segment, template } = props
  const [chosen, setChosen] = useState<string | null>(null)
  const channel = Math.max(0, channels.indexOf(chosen ?? liveliest(channels, template)))
  const of = (series: Int8Array) => (point: number) =>
    series[point * channels.length + channel] ?? 0
  return (
    <>
      <SelectField
        label={REPLAY_TRACES.pairing.channel}
        value={channels[channel] ?? ''}
        options={channels.map((name) => ({ value: name, text: name }))}
        onChange={setChosen}
      />
      <div class="pairing">
        <Links {...props} above={of(segment)} below={of(template)} />
        <Path {...props} />
      </div>
      <p class="small quiet">{REPLAY_TRACES.pairing.hint}</p>
    </>
  )
}

/** The channel in which the template moves most. */
function liveliest(channels: string[], template: Int8Array): string {
  const sizes = channels.map((_, channel) => {
    let sum = 0
    for (let i = channel; i < template.length; i += channels.length) sum += Math.abs(template[i]!)
    return sum
  })
  return channels[sizes.indexOf(Math.max(...sizes))] ?? ''
}

interface LinksProps extends PairingProps {
  above: (point: number) => number
  below: (point: number) => number
}

function Links({ segment, channels, warping, point, above, below }: LinksProps) {
  const [ref, width] = useWidth<HTMLDivElement>()
  const points = segment.length / channels.length
  const xOf = (at: number) => 2 + (at * (width - 4)) / Math.max(1, points - 1)
  const yOf = (value: number) => (HALF / 2) * (1 - value / 128) + 2
  const lowered = (value: number) => yOf(value) + HEIGHT - HALF - 4
  const span = { from: 0, to: points }
  return (
    <div class="pairing-links" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={REPLAY_TRACES.pairing.links}>
          {warping.path.map(([i, j]) => (
            <path
              key={`${i} ${j}`}
              class={i === point ? 'pairing-link pairing-now' : 'pairing-link'}
              d={`M${xOf(i)} ${yOf(above(i))}L${xOf(j)} ${lowered(below(j))}`}
            />
          ))}
          <g transform="translate(2 0)">
            <path class="lane-trace" d={tracePath(above, span, width - 4, yOf)} />
            <path class="pairing-template" d={tracePath(below, span, width - 4, lowered)} />
          </g>
        </svg>
      )}
    </div>
  )
}

const SIDE = 120

/** The path in the square of all pairs, with the band it had to keep to. */
function Path({ segment, channels, warping, band, point }: PairingProps) {
  const points = segment.length / channels.length
  const cell = SIDE / points
  const at = (index: number) => (index + 0.5) * cell
  const edge = Math.min(points, band + 0.5) * cell
  const line = warping.path
    .map(([i, j], k) => `${k === 0 ? 'M' : 'L'}${at(i).toFixed(1)} ${(SIDE - at(j)).toFixed(1)}`)
    .join('')
  return (
    <svg
      class="pairing-path"
      width={SIDE}
      height={SIDE}
      role="img"
      aria-label={REPLAY_TRACES.pairing.path}
    >
      <rect width={SIDE} height={SIDE} />
      <polygon
        points={`0,${SIDE} ${edge},${SIDE} ${SIDE},${edge} ${SIDE},0 ${SIDE - edge},0 0,${SIDE - edge}`}
      />
      <path d={line} />
      {point >= 0 && <path class="pairing-now" d={`M${at(point)} 0V${SIDE}`} />}
    </svg>
  )
}
