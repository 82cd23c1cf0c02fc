import { useComputed } from '@preact/signals'
import { useMemo, useState } from 'preact/hooks'
import type { CoreEvent } from '../../shared/core/core'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import type { Replay } from '../../shared/model/replay'
import { channelNames, growthOf } from '../../shared/present/growth'
import type { DecisionMarks } from '../../shared/replay/marks'
import { pointAtSample } from '../../shared/replay/sample-of-point'
import type { NearestWarping } from '../../shared/replay/unroll'
import { REPLAY_TRACES } from '../../shared/words/en/replay-traces'
import { verdict } from '../../shared/words/en/verdict'
import { type Cut, type Lane, Lanes, type Span } from '../charts'
import { Button, Section, SelectField, useApp } from '../common'
import { GrowthPlot } from './growth'
import { lanesOf } from './lanes-of'
import { Pairing } from './pairing'
import type { PlayHead } from './play-head'
import type { ReplayViewProps } from './replay-view'
import { choicesBeside, useBeside } from './use-beside'
import { useUnrolled } from './use-unrolled'

export interface TracesProps extends ReplayViewProps {
  head: PlayHead
  light: string[]
  marks: DecisionMarks[]
}

/** Energy and traces with another take behind them, the distances growing, and the warping. */
export function Traces(props: TracesProps) {
  const { replay, model, library, recording, head, light, marks } = props
  const app = useApp()
  const [beside, setBeside] = useState('')
  const active = useComputed(() =>
    Math.max(0, marks.filter(({ start }) => start <= head.sample).length - 1),
  ).value
  const event = replay.events[active]
  const warpings = useUnrolled(replay, model, active)
  const other = useBeside(beside, event?.start ?? 0)
  const lanes = useMemo(
    () => lanesOf(replay, library.target, other),
    [replay, library.target, other?.replay, other?.shift],
  )
  const cuts = useMemo(() => cutsOf(replay, model), [replay, model])
  const span = head.span.value
  const total = replay.energy.length
  const nearest = nearestOf(event, warpings)
  const choices = choicesBeside(recording, app.library.recordings.value, nearest, model)
  return (
    <div class="replay-traces">
      <LanesAt head={head} replay={replay} lanes={lanes} cuts={cuts} light={light} />
      {(span.from > 0 || span.to < total) && (
        <Button tone="quiet" onClick={() => head.show({ from: 0, to: total }, head.at.peek())}>
          {REPLAY_TRACES.whole}
        </Button>
      )}
      {choices.length > 1 && (
        <SelectField
          label={REPLAY_TRACES.beside}
          value={beside}
          options={choices.map(({ id, text }) => ({ value: id, text }))}
          onChange={setBeside}
          hint={REPLAY_TRACES.besideHint}
        />
      )}
      {event !== undefined && warpings !== null && marks[active] !== undefined && (
        <Compared {...props} event={event} warpings={warpings} active={active} />
      )}
    </div>
  )
}

interface LanesAtProps {
  head: PlayHead
  replay: Replay
  lanes: Lane[]
  cuts: Cut[]
  light: string[]
}

/** The lanes with the play head in them: of all traces only this follows each step. */
function LanesAt({ head, replay, lanes, cuts, light }: LanesAtProps) {
  return (
    <Lanes
      lanes={lanes}
      rateHz={replay.rateHz}
      span={head.span.value}
      cuts={cuts}
      measuredTo={replay.recordedCount}
      cursor={head.sample}
      onCursor={(sample) => {
        head.playing.value = false
        head.moveTo(sample)
      }}
      light={light}
      label={REPLAY_TRACES.lanes}
    />
  )
}

interface ComparedProps extends TracesProps {
  event: CoreEvent
  warpings: (NearestWarping | null)[]
  active: number
}

/** What the matcher saw of one movement. */
function Compared({ replay, model, head, marks, event, warpings, active }: ComparedProps) {
  const growth = useMemo(() => growthOf(event, warpings, model), [event, warpings, model])
  const mark = marks[active]
  if (growth === null || mark === undefined) {
    return <p class="small quiet">{REPLAY_TRACES.kernelAlone}</p>
  }
  return (
    <>
      <Section title={REPLAY_TRACES.distance}>
        <GrowthPlot
          growth={growth}
          marks={mark}
          span={growthSpan(mark, head.span.value)}
          cursor={head.sample}
        />
        <p class="small quiet">
          {model.kernel === null ? REPLAY_TRACES.sumOfCosts : REPLAY_TRACES.sumWithKernel}
        </p>
      </Section>
      <Against
        model={model}
        segment={replay.queries[active] ?? null}
        event={event}
        warpings={warpings}
        sample={head.sample}
        mark={mark}
      />
    </>
  )
}

/** A segment shorter than this share of what the traces show is shown in a time of its own. */
const LEAST_SHARE = 0.2

/** The time of the traces, or the segment's own with as much again around it. */
function growthSpan({ start, end }: DecisionMarks, shown: Span): Span {
  const length = end - start
  if (length >= LEAST_SHARE * (shown.to - shown.from)) return shown
  return { from: start - Math.round(length / 2), to: end + Math.round(length / 2) }
}

interface AgainstProps {
  model: RecogniserModel
  segment: Int8Array | null
  event: CoreEvent
  warpings: (NearestWarping | null)[]
  sample: number
  mark: DecisionMarks
}

/** The segment laid against one gesture's nearest template, point by point. */
function Against({ model, segment, event, warpings, sample, mark }: AgainstProps) {
  const [chosen, setChosen] = useState<string | null>(null)
  const own = model.gestures[event.gesture ?? -1]?.id ?? null
  const key = chosen ?? own
  const index = Math.max(
    0,
    model.gestures.findIndex(({ id }) => id === key),
  )
  const gesture = model.gestures[index]
  const warping = warpings[index] ?? null
  const template = gesture?.templates[warping?.template ?? -1]
  const channels = useMemo(() => channelNames(model), [model])
  if (segment === null || gesture === undefined) return null
  return (
    <Section title={REPLAY_TRACES.against}>
      <SelectField
        label={REPLAY_TRACES.nearestOf}
        value={gesture.id}
        options={model.gestures.map(({ id, name }, i) => ({
          value: id,
          text: optionText(name, warpings[i] ?? null),
        }))}
        onChange={setChosen}
      />
      {warping !== null && template !== undefined && (
        <Pairing
          segment={segment}
          template={template}
          channels={channels}
          warping={warping}
          band={model.band}
          point={pointAtSample(sample, segment.length / channels.length, mark)}
        />
      )}
    </Section>
  )
}

function optionText(name: string, warping: NearestWarping | null): string {
  return warping === null
    ? REPLAY_TRACES.noTemplate(name)
    : REPLAY_TRACES.distanceOf(name, warping.distance)
}

function nearestOf(event: CoreEvent | undefined, warpings: (NearestWarping | null)[] | null) {
  const gesture = event?.gesture ?? null
  const warping = gesture === null ? null : (warpings?.[gesture] ?? null)
  return gesture === null || warping === null ? null : { gesture, warping }
}

function cutsOf(replay: Replay, model: RecogniserModel): Cut[] {
  return replay.events.map((event) => ({
    start: event.start,
    end: event.end,
    text: event.kind === 'reject' ? REPLAY_TRACES.none : verdict(event, model).headline,
    rejected: event.kind === 'reject',
  }))
}
