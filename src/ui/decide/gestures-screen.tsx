import { useState } from 'preact/hooks'
import type { GestureDecision, PairReport } from '../../shared/decide/gesture-decision'
import { largestGoodSize, setPoint } from '../../shared/present/kept-sets'
import { pairsInOrder } from '../../shared/present/pairs-in-order'
import { DECIDE_GESTURES } from '../../shared/words/en/decide-gestures'
import {
  adviceText,
  adviceTitle,
  gesturesBasis,
  gesturesSentence,
} from '../../shared/words/en/pair-words'
import {
  provenSentence,
  setSentence,
  setsBasis,
  spokenSet,
  unseenSentence,
} from '../../shared/words/en/subset-words'
import { RateAxis, RateBar, rateAxisStart } from '../charts'
import { Button, route, Section, Slider } from '../common'
import { GestureRibbon } from '../ribbon'
import { CountPlot } from './count-plot'
import { DecideScreen } from './decide-screen'
import { useDecide } from './use-decide'

/** Pairs that are shown before the rest is asked for. */
const FIRST_PAIRS = 5

/** Which gestures are told apart, by what, and which to keep. */
export function GesturesScreen() {
  const { gestures, decideGestures } = useDecide()
  return (
    <DecideScreen
      title={DECIDE_GESTURES.title}
      job={gestures.value}
      about={DECIDE_GESTURES.about}
      action={DECIDE_GESTURES.pair.compareAll}
      run={() => void decideGestures()}
    >
      {(decision) => (
        <>
          <p class="decide-sentence">{gesturesSentence(decision)}</p>
          <p class="quiet small">{gesturesBasis(decision)}</p>
          <Pairs decision={decision} />
          <Sets decision={decision} />
        </>
      )}
    </DecideScreen>
  )
}

function Pairs({ decision }: { decision: GestureDecision }) {
  const [all, setAll] = useState(false)
  const pairs = pairsInOrder(decision)
  const advised = pairs.filter(({ advice }) => advice !== null).length
  const shown = all ? pairs : pairs.slice(0, Math.max(FIRST_PAIRS, advised))
  const from = rateAxisStart(shown.flatMap(({ told }) => told.recogniser ?? []))
  return (
    <Section title={DECIDE_GESTURES.pairs}>
      <RateAxis from={from} />
      {shown.map((pair) => (
        <Pair key={`${pair.first} ${pair.second}`} decision={decision} pair={pair} from={from} />
      ))}
      {shown.length < pairs.length && (
        <Button onClick={() => setAll(true)}>
          {DECIDE_GESTURES.showMore(pairs.length - shown.length)}
        </Button>
      )}
    </Section>
  )
}

interface PairProps {
  decision: GestureDecision
  pair: PairReport
  from: number
}

function Pair({ decision, pair, from }: PairProps) {
  const [a, b] = [pair.first, pair.second].map((i) => decision.gestures[i])
  if (a === undefined || b === undefined || pair.told.recogniser === null) return null
  return (
    <article class="decide-pair">
      <a class="decide-pair-head" href={route('decide', 'pair', a.id, b.id)}>
        <GestureRibbon gestureId={a.id} size={40} />
        <GestureRibbon gestureId={b.id} size={40} />
        <span>
          <b>{DECIDE_GESTURES.pairOf(a.name, b.name)}</b>
          {pair.advice !== null && (
            <span class="quiet small">{DECIDE_GESTURES.advice(adviceTitle(pair.advice))}</span>
          )}
        </span>
      </a>
      <RateBar name={DECIDE_GESTURES.toldApart} rate={pair.told.recogniser} from={from} />
      {pair.advice !== null && <p>{adviceText(decision, pair)}</p>}
    </article>
  )
}

function Sets({ decision }: { decision: GestureDecision }) {
  const { subsets } = decision
  const [size, setSize] = useState(largestGoodSize(subsets))
  const set = subsets.find(({ members }) => members.length === size)
  if (set === undefined || subsets.length < 2) return null
  return (
    <Section title={DECIDE_GESTURES.sets.title}>
      <CountPlot
        label={DECIDE_GESTURES.sets.plot}
        points={subsets.map((set) => ({ ...setPoint(set), spoken: spokenSet(set) }))}
        axis={DECIDE_GESTURES.sets.axis}
        names={[DECIDE_GESTURES.sets.right, DECIDE_GESTURES.sets.worstPair]}
        chosen={size}
      />
      <Slider
        label={DECIDE_GESTURES.sets.slider}
        value={size}
        min={subsets[0]?.members.length ?? 2}
        max={subsets.at(-1)?.members.length ?? 2}
        text={DECIDE_GESTURES.sets.size(size)}
        onInput={setSize}
      />
      <p>{setSentence(decision, set)}</p>
      <p class="quiet small">
        {unseenSentence(set)} {provenSentence(set)} {setsBasis(subsets)}{' '}
        {DECIDE_GESTURES.sets.withAll(decision.accuracy.value)}
      </p>
    </Section>
  )
}
