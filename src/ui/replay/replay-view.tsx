import { useMemo, useState } from 'preact/hooks'
import { CORE_PHASES, type CorePhase } from '../../shared/core/core'
import type { Recording } from '../../shared/model/library'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import type { Replay } from '../../shared/model/replay'
import type { Target } from '../../shared/model/target'
import { UNIT_SPACE } from '../../shared/present/numbers'
import { noCutSentence } from '../../shared/present/silence'
import { verdict } from '../../shared/present/verdict'
import { type Cut, Lanes, type Span } from '../charts'
import { Button, Notice, Section } from '../common'
import { EventCard } from './event-card'
import { lanesOf } from './lanes-of'
import { RawFacts } from './raw-facts'

const PHASE_WORDS: Record<CorePhase, string> = {
  idle: 'at rest',
  moving: 'inside a movement',
  'wait-rest': 'waiting for rest',
}

/** Seconds that are shown around a movement. */
const MARGIN_S = 0.6
/** A longer recording opens on its first movement. */
const LONG_S = 15

export interface ReplayViewProps {
  replay: Replay
  model: RecogniserModel
  target: Target
  recording: Recording
}

/** A recording as the recogniser saw it, sample by sample. */
export function ReplayView({ replay, model, target, recording }: ReplayViewProps) {
  const total = replay.energy.length
  const whole: Span = { from: 0, to: total }
  const [span, setSpan] = useState<Span>(() => firstSpan(replay))
  const [cursor, setCursor] = useState(() => replay.events[0]?.start ?? 0)
  const lanes = useMemo(() => lanesOf(replay, target), [replay, target])
  const cuts = useMemo(() => cutsOf(replay, model), [replay, model])
  const noCut = noCutSentence(replay)
  const show = (index: number) => {
    const event = replay.events[index]
    if (event === undefined) return
    setSpan(around(event.start, event.end, replay))
    setCursor(event.start)
  }
  return (
    <>
      {noCut !== '' && (
        <Notice>
          <p>{noCut}</p>
        </Notice>
      )}
      <div class="replay-traces">
        <Lanes
          lanes={lanes}
          rateHz={replay.rateHz}
          span={span}
          cuts={cuts}
          measuredTo={replay.recordedCount}
          cursor={cursor}
          onCursor={setCursor}
          label="Motion energy against its thresholds and the six traces of the recording"
        />
        <Scrub replay={replay} span={span} cursor={cursor} onCursor={setCursor} />
        {(span.from > 0 || span.to < total) && (
          <Button tone="quiet" onClick={() => setSpan(whole)}>
            Show the whole recording
          </Button>
        )}
      </div>
      {replay.events.map((event, index) => (
        <EventCard
          key={event.start}
          event={event}
          distances={replay.gestureDistances[index] ?? null}
          model={model}
          onShow={() => show(index)}
        />
      ))}
      <Section title="As recorded">
        <RawFacts recording={recording} replay={replay} />
      </Section>
    </>
  )
}

interface ScrubProps {
  replay: Replay
  span: Span
  cursor: number
  onCursor: (sample: number) => void
}

function Scrub({ replay, span, cursor, onCursor }: ScrubProps) {
  const phase = CORE_PHASES[replay.phase[cursor] ?? 0] ?? 'idle'
  const seconds = (cursor / replay.rateHz).toFixed(2)
  return (
    <label class="scrub">
      <span>
        <b>
          {seconds}
          {UNIT_SPACE}s
        </b>{' '}
        <span class="quiet">
          sample {cursor}, {PHASE_WORDS[phase]}
          {cursor >= replay.recordedCount ? '; stillness added after the recording' : ''}
        </span>
      </span>
      <input
        type="range"
        min={span.from}
        max={Math.max(span.to - 1, span.from)}
        value={cursor}
        onInput={(event) => onCursor(event.currentTarget.valueAsNumber)}
      />
    </label>
  )
}

function cutsOf(replay: Replay, model: RecogniserModel): Cut[] {
  return replay.events.map((event) => ({
    start: event.start,
    end: event.end,
    text: event.kind === 'reject' ? 'none' : verdict(event, model).headline,
    rejected: event.kind === 'reject',
  }))
}

function firstSpan(replay: Replay): Span {
  const total = replay.energy.length
  const first = replay.events[0]
  if (total <= LONG_S * replay.rateHz) return { from: 0, to: total }
  if (first === undefined) return { from: 0, to: total }
  return around(first.start, first.end, replay)
}

function around(start: number, end: number, replay: Replay): Span {
  const margin = Math.round(MARGIN_S * replay.rateHz)
  return { from: Math.max(0, start - margin), to: Math.min(replay.energy.length, end + margin) }
}
