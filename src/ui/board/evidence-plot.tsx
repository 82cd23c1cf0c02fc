import type { Evidence } from '../../shared/board/check/finding'
import { BOARD_FOUND } from '../../shared/words/en/board-found'
import { shortNumber } from '../../shared/words/en/numbers'
import { spreadLabels } from '../charts/spread-labels'
import { extremes, tracePath } from '../charts/trace-path'
import { useWidth } from '../charts/use-width'

const HEIGHT = 110
const TOP = 8
const DASHES = ['', '6 3', '2 3']

/** The small picture a finding rests on. */
export function EvidencePlot({ evidence, label }: { evidence: Evidence; label: string }) {
  switch (evidence.kind) {
    case 'rows':
      if (evidence.rows.length === 0) return null
      return <pre class="board-tail">{evidence.rows.join('\n')}</pre>
    case 'bars':
      return <Bars bars={evidence.bars} unit={evidence.unit} label={label} />
    case 'trace':
      return <Trace evidence={evidence} label={label} />
    case 'spectrum':
      return <SpectrumPlot evidence={evidence} label={label} />
  }
}

type BarEvidence = Extract<Evidence, { kind: 'bars' }>

/** Values as dots beside the range that passes. */
function Bars({ bars, unit, label }: Omit<BarEvidence, 'kind'> & { label: string }) {
  const all = bars.flatMap(({ value, low, high }) => [value, low, high])
  const from = Math.min(0, ...all)
  const to = Math.max(0, ...all)
  const at = (value: number) => `${((100 * (value - from)) / (to - from || 1)).toFixed(2)}%`
  return (
    <table class="evidence-bars" aria-label={label}>
      <tbody>
        {bars.map(({ label: name, value, low, high }) => (
          <tr key={name} class={value < low || value > high ? 'evidence-off' : ''}>
            <th scope="row">{name}</th>
            <td class="evidence-track">
              <i
                class="evidence-pass"
                style={{ left: at(low), width: `calc(${at(high)} - ${at(low)})` }}
              />
              <i class="evidence-dot" style={{ left: at(value) }} />
            </td>
            <td class="evidence-value">
              {shortNumber(value)} {unit}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Trace({
  evidence,
  label,
}: {
  evidence: Extract<Evidence, { kind: 'trace' }>
  label: string
}) {
  const [ref, width] = useWidth<HTMLDivElement>()
  const { lines, durationS, unit } = evidence
  const ends = lines.flatMap(({ values }) =>
    extremes((i) => values[i]!, { from: 0, to: values.length }),
  )
  const low = Math.min(...ends)
  const high = Math.max(...ends)
  const yOf = (value: number) => TOP + (HEIGHT - 2 * TOP) * (1 - (value - low) / (high - low || 1))
  return (
    <figure class="evidence" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={label}>
          {lines.map(({ label: name, values }, i) => (
            <g key={name}>
              <path
                class="evidence-line"
                stroke-dasharray={DASHES[i]}
                d={tracePath((k) => values[k]!, { from: 0, to: values.length }, width - 28, yOf)}
              />
            </g>
          ))}
          {spreadLabels(
            lines.map(({ label: name, values }) => ({ name, y: yOf(values.at(-1) ?? 0) })),
          ).map(({ name, y }) => (
            <text key={name} x={width - 24} y={y + 4}>
              {name}
            </text>
          ))}
        </svg>
      )}
      <figcaption class="quiet small">
        {BOARD_FOUND.traceRange(low, high, unit, durationS)}
      </figcaption>
    </figure>
  )
}

function SpectrumPlot({
  evidence,
  label,
}: {
  evidence: Extract<Evidence, { kind: 'spectrum' }>
  label: string
}) {
  const [ref, width] = useWidth<HTMLDivElement>()
  const { levels, toHz, peakHz } = evidence
  const top = Math.log10(Math.max(...levels))
  const yOf = (level: number) => {
    const decades = top - Math.log10(Math.max(level, 1e-30))
    return TOP + 12 + (HEIGHT - 2 * TOP - 12) * Math.min(1, decades / 5)
  }
  const peakX = (peakHz / toHz) * width
  return (
    <figure class="evidence" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={label}>
          <path
            class="evidence-line"
            d={tracePath((k) => levels[k]!, { from: 0, to: levels.length }, width, yOf)}
          />
          <text x={Math.min(Math.max(peakX, 24), width - 24)} y={TOP + 4} text-anchor="middle">
            {BOARD_FOUND.peak(peakHz)}
          </text>
        </svg>
      )}
      <figcaption class="quiet small">{BOARD_FOUND.spectrumRange(toHz)}</figcaption>
    </figure>
  )
}
