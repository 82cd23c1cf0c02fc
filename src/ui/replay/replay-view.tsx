import { useComputed } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useMemo } from 'preact/hooks'
import { measureDrift } from '../../shared/attitude/drift'
import type { Library, Recording } from '../../shared/model/library'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import type { Replay } from '../../shared/model/replay'
import { decisionMarks } from '../../shared/replay/marks'
import { propPoses, propSamples } from '../../shared/replay/prop-poses'
import { nearestMounting } from '../../shared/target/mountings'
import { driftWords } from '../../shared/words/en/attitude-words'
import { REPLAY_VIEW } from '../../shared/words/en/replay-view'
import { noCutSentence } from '../../shared/words/en/silence'
import { verdict } from '../../shared/words/en/verdict'
import type { Span } from '../charts'
import { Notice, Screen, Section } from '../common'
import { EventCard } from './event-card'
import { PropView } from './prop-view'
import { RawFacts } from './raw-facts'
import { Traces } from './traces'
import { Transport } from './transport'
import { useLightTrack } from './use-light-track'
import { usePlayHead } from './use-play-head'

/** Seconds that are shown around a movement. */
const MARGIN_S = 0.6
/** A longer recording opens on its first movement. */
const LONG_S = 15

export interface ReplayViewProps {
  title: string
  aside: ComponentChildren
  replay: Replay
  model: RecogniserModel
  library: Library
  recording: Recording
}

/** A recording as the recogniser saw it, with one play head for all that is shown of it. */
export function ReplayView(props: ReplayViewProps) {
  const { title, aside, replay, model, library, recording } = props
  const { target } = library
  const first = useMemo(() => firstSpan(replay), [replay])
  const head = usePlayHead(replay, first)
  const poses = useMemo(() => propPoses(replay, target), [replay, target])
  const light = useLightTrack(library, model, replay)
  const marks = useMemo(() => decisionMarks(replay), [replay])
  const decided = useComputed(
    () => marks.filter((mark) => mark.decided <= head.sample).length - 1,
  ).value
  const event = replay.events[decided]
  const noCut = noCutSentence(replay)
  const show = (index: number) => {
    const { start, end } = replay.events[index] ?? { start: 0, end: 0 }
    head.show(around(start, end, replay), start)
  }
  return (
    <Screen
      title={title}
      back="#/moves"
      aside={aside}
      foot={<Transport head={head} replay={replay} />}
    >
      <PropView
        head={head}
        poses={poses}
        light={light.colours}
        target={target}
        answer={event === undefined ? '' : verdict(event, model).headline}
      />
      {noCut !== '' && (
        <Notice>
          <p>{noCut}</p>
        </Notice>
      )}
      <Traces {...props} head={head} light={light.colours} marks={marks} />
      {light.tooFast && <p class="small quiet">{REPLAY_VIEW.lightTooFast}</p>}
      {replay.events.map((cut, index) => (
        <EventCard
          key={cut.start}
          event={cut}
          distances={replay.gestureDistances[index] ?? null}
          model={model}
          onShow={() => show(index)}
        />
      ))}
      <p class="small quiet">{REPLAY_VIEW.allTakes}</p>
      <AttitudeSection replay={replay} library={library} hasGyro={recording.device.hasGyro} />
      <Section title={REPLAY_VIEW.asRecorded}>
        <RawFacts recording={recording} replay={replay} />
      </Section>
    </Screen>
  )
}

interface AttitudeSectionProps {
  replay: Replay
  library: Library
  hasGyro: boolean
}

/** How the attitude is come by and how far it may be off; how the board sits. */
function AttitudeSection({ replay, library: { target }, hasGyro }: AttitudeSectionProps) {
  const drift = useMemo(
    () => driftWords(measureDrift(propSamples(recorded(replay), target), 1), hasGyro),
    [replay, target, hasGyro],
  )
  const { mounting, angleDeg } = nearestMounting(target.mounting)

  return (
    <Section title={REPLAY_VIEW.attitude.title}>
      <p class="small">{REPLAY_VIEW.attitude.estimated}</p>
      <p class="small">{drift}</p>
      <p class="small">{REPLAY_VIEW.attitude.axes(mounting.name, angleDeg)}</p>
    </Section>
  )
}

/** Without the stillness added after it, which no sensor has shown. */
function recorded(replay: Replay): Replay {
  return { ...replay, counts: replay.counts.subarray(0, replay.recordedCount * 6) }
}

function firstSpan(replay: Replay): Span {
  const total = replay.energy.length
  const first = replay.events[0]
  if (total <= LONG_S * replay.rateHz || first === undefined) return { from: 0, to: total }
  return around(first.start, first.end, replay)
}

function around(start: number, end: number, replay: Replay): Span {
  const margin = Math.round(MARGIN_S * replay.rateHz)
  return { from: Math.max(0, start - margin), to: Math.min(replay.energy.length, end + margin) }
}
