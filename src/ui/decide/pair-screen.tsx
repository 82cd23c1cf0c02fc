import type {
  GestureDecision,
  GestureProfile,
  PairReport,
} from '../../shared/decide/gesture-decision'
import { apartBy } from '../../shared/decide/profiles'
import { shortNumber } from '../../shared/words/en/numbers'
import { adviceText, axisWord, furthest, whereText } from '../../shared/words/en/pair-words'
import { RateAxis, RateBar, rateAxisStart } from '../charts'
import { NextStep, Screen, Section } from '../common'
import { GestureRibbon } from '../ribbon'
import { ApartStrip } from './apart-strip'
import { CoursePlot } from './course-plot'
import { useDecide } from './use-decide'

/** Two gestures against each other: where they differ, and what tells them apart. */
export function PairScreen({ ids }: { ids: [string, string] }) {
  const job = useDecide().gestures.value
  const decision = job.state === 'done' ? job.value : null
  const pair = decision === null ? undefined : pairOf(decision, ids)
  if (decision === null || pair === undefined) {
    return (
      <Screen title="Pair" back="#/decide/gestures">
        <NextStep
          text="This pair is not in the comparison at hand."
          action="Compare all gestures"
          href="#/decide/gestures"
        />
      </Screen>
    )
  }
  const [a, b] = [pair.first, pair.second].map((i) => decision.gestures[i]!.name)
  return (
    <Screen title={`${a} and ${b}`} back="#/decide/gestures">
      <div class="decide-ribbons">
        <GestureRibbon gestureId={decision.gestures[pair.first]!.id} size={96} label={a ?? ''} />
        <GestureRibbon gestureId={decision.gestures[pair.second]!.id} size={96} label={b ?? ''} />
      </div>
      <p class="decide-sentence">{adviceText(decision, pair)}</p>
      <Where decision={decision} pair={pair} />
      <ByWhat pair={pair} />
    </Screen>
  )
}

function pairOf(decision: GestureDecision, ids: [string, string]): PairReport | undefined {
  const [a, b] = ids.map((id) => decision.gestures.findIndex((gesture) => gesture.id === id))
  return decision.pairs.find(
    ({ first, second }) => (first === a && second === b) || (first === b && second === a),
  )
}

function Where({ decision, pair }: { decision: GestureDecision; pair: PairReport }) {
  const [a, b] = [pair.first, pair.second].map((gesture) =>
    decision.profiles.find((profile) => profile.gesture === gesture),
  )
  if (a === undefined || b === undefined) return null
  const { channels } = decision
  const most = furthest(a, b, channels)
  return (
    <Section title="Where they differ">
      <p>{whereText(decision, pair)}</p>
      <ApartStrip apart={apartBy(a, b)} channels={channels} />
      {most !== null && (
        <CoursePlot
          label={`Course of ${axisWord(most.axis)}`}
          title={axisWord(most.axis)}
          lines={[course(decision, a, most.axis), course(decision, b, most.axis)]}
        />
      )}
      <p class="quiet small">
        Segments as the recogniser compares them, {a.takes} and {b.takes} takes: each stretched to{' '}
        {decision.length} points. The strip counts the difference of the means in standard
        deviations within a gesture; bands are one standard deviation.
      </p>
    </Section>
  )
}

function course({ gestures, channels }: GestureDecision, profile: GestureProfile, axis: number) {
  const of = (values: readonly number[]) => values.filter((_, at) => at % channels === axis)
  return {
    name: gestures[profile.gesture]?.name ?? '',
    mean: of(profile.mean),
    deviation: of(profile.deviation),
  }
}

function ByWhat({ pair }: { pair: PairReport }) {
  const { recogniser, shape, accelerometer, unaligned } = pair.told
  const rows = [
    { name: 'as compared', rate: recogniser },
    { name: 'rotation alone', rate: shape },
    { name: 'duration alone', rate: pair.byDuration },
    { name: 'size alone', rate: pair.bySize },
    { name: 'no gyroscope', rate: accelerometer },
    { name: 'not aligned', rate: unaligned },
  ].flatMap(({ name, rate }) => (rate === null ? [] : [{ name, rate }]))
  const from = rateAxisStart(rows.map(({ rate }) => rate))
  const { value, low, high, n } = pair.margin
  return (
    <Section title="By what they are told apart">
      <RateAxis from={from} />
      {rows.map(({ name, rate }) => (
        <RateBar key={name} name={name} rate={rate} from={from} />
      ))}
      <p class="quiet small">
        Half would be told apart by chance. The other gesture is {shortNumber(Math.exp(value))}{' '}
        times as far as the own one ({shortNumber(Math.exp(low))} to {shortNumber(Math.exp(high))},
        95 % over takes; median of {n} held-out takes).
      </p>
    </Section>
  )
}
