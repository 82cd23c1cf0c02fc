import type {
  GestureDecision,
  GestureProfile,
  PairReport,
} from '../../shared/decide/gesture-decision'
import { apartBy } from '../../shared/decide/profiles'
import { furthest } from '../../shared/present/furthest-apart'
import { DECIDE_GESTURES } from '../../shared/words/en/decide-gestures'
import { adviceText, axisWord, whereText } from '../../shared/words/en/pair-words'
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
      <Screen title={DECIDE_GESTURES.pair.title} back="#/decide/gestures">
        <NextStep
          text={DECIDE_GESTURES.pair.noPair}
          action={DECIDE_GESTURES.pair.compareAll}
          href="#/decide/gestures"
        />
      </Screen>
    )
  }
  const [a, b] = [pair.first, pair.second].map((i) => decision.gestures[i]!.name)
  return (
    <Screen title={DECIDE_GESTURES.pairOf(a ?? '', b ?? '')} back="#/decide/gestures">
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
    <Section title={DECIDE_GESTURES.pair.where}>
      <p>{whereText(decision, pair)}</p>
      <ApartStrip apart={apartBy(a, b)} channels={channels} />
      {most !== null && (
        <CoursePlot
          label={DECIDE_GESTURES.pair.courseOf(axisWord(most.axis))}
          title={axisWord(most.axis)}
          lines={[course(decision, a, most.axis), course(decision, b, most.axis)]}
        />
      )}
      <p class="quiet small">{DECIDE_GESTURES.pair.hint(a.takes, b.takes, decision.length)}</p>
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
    { name: DECIDE_GESTURES.pair.asCompared, rate: recogniser },
    { name: DECIDE_GESTURES.pair.rotationAlone, rate: shape },
    { name: DECIDE_GESTURES.pair.durationAlone, rate: pair.byDuration },
    { name: DECIDE_GESTURES.pair.sizeAlone, rate: pair.bySize },
    { name: DECIDE_GESTURES.pair.noGyroscope, rate: accelerometer },
    { name: DECIDE_GESTURES.pair.notAligned, rate: unaligned },
  ].flatMap(({ name, rate }) => (rate === null ? [] : [{ name, rate }]))
  const from = rateAxisStart(rows.map(({ rate }) => rate))
  const { value, low, high, n } = pair.margin
  return (
    <Section title={DECIDE_GESTURES.pair.byWhat}>
      <RateAxis from={from} />
      {rows.map(({ name, rate }) => (
        <RateBar key={name} name={name} rate={rate} from={from} />
      ))}
      <p class="quiet small">
        {DECIDE_GESTURES.pair.margin({
          value: Math.exp(value),
          low: Math.exp(low),
          high: Math.exp(high),
          n,
        })}
      </p>
    </Section>
  )
}
