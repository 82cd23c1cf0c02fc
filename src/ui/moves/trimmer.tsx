import { useState } from 'preact/hooks'
import type { Trim } from '../../shared/model/library'
import type { SampleBlock } from '../../shared/model/sample'
import { GESTURE } from '../../shared/words/en/gesture'
import { durationText } from '../../shared/words/en/numbers'
import { Button } from '../common'
import { SmallTrace } from './small-trace'

/** Shortest stretch that two handles may leave, ms. */
const SHORTEST_MS = 100
const STEP_MS = 10

export interface TrimmerProps {
  samples: SampleBlock
  durationMs: number
  trim: Trim | null
  onTrim: (trim: Trim | null) => void
}

/** Two handles under a trace choose the part that counts. */
export function Trimmer({ samples, durationMs, trim, onTrim }: TrimmerProps) {
  const [part, setPart] = useState<Trim>(trim ?? { startMs: 0, endMs: durationMs })
  const share = (ms: number) => `${(100 * ms) / Math.max(durationMs, 1)}%`
  const whole = part.startMs <= 0 && part.endMs >= durationMs
  const apply = () => onTrim(whole ? null : part)
  return (
    <div class="trim">
      <div class="trim-trace">
        <SmallTrace samples={samples} durationMs={durationMs} />
        <div class="trim-cut" style={{ left: 0, width: share(part.startMs) }} />
        <div class="trim-cut" style={{ left: share(part.endMs), right: 0 }} />
      </div>
      <div class="trim-handles">
        <Handle
          label={GESTURE.start}
          value={part.startMs}
          durationMs={durationMs}
          onInput={(startMs) =>
            setPart({ ...part, startMs: Math.min(startMs, part.endMs - SHORTEST_MS) })
          }
          onChange={apply}
        />
        <Handle
          label={GESTURE.end}
          value={part.endMs}
          durationMs={durationMs}
          onInput={(endMs) =>
            setPart({ ...part, endMs: Math.max(endMs, part.startMs + SHORTEST_MS) })
          }
          onChange={apply}
        />
      </div>
      <p class="quiet small">
        {whole
          ? GESTURE.wholeCounts(durationMs)
          : GESTURE.partCounts(part.endMs - part.startMs, durationMs)}
      </p>
      {trim !== null && (
        <div class="buttons">
          <Button
            onClick={() => {
              setPart({ startMs: 0, endMs: durationMs })
              onTrim(null)
            }}
          >
            {GESTURE.useWhole}
          </Button>
        </div>
      )}
    </div>
  )
}

interface HandleProps {
  label: string
  value: number
  durationMs: number
  onInput: (ms: number) => void
  onChange: () => void
}

function Handle({ label, value, durationMs, onInput, onChange }: HandleProps) {
  return (
    <input
      type="range"
      aria-label={label}
      aria-valuetext={durationText(value)}
      min={0}
      max={durationMs}
      step={STEP_MS}
      value={value}
      onInput={(event) => onInput(event.currentTarget.valueAsNumber)}
      onChange={onChange}
    />
  )
}
