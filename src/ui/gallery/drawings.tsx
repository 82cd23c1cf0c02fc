import { useState } from 'preact/hooks'
import { wilson } from '../../shared/statistics/wilson'
import { groupDigits } from '../../shared/words/en/numbers'
import {
  ConfusionMatrix,
  DistanceBars,
  EnergyTrace,
  type Lane,
  Lanes,
  RateAxis,
  RateBar,
  rateAxisStart,
  rootHeight,
} from '../charts'
import { RibbonView } from '../ribbon'
import {
  CUTS,
  DISTANCES,
  ENERGY,
  EVALUATION,
  OFF_THRESHOLD,
  ON_THRESHOLD,
  ribbonExample,
} from './examples'
import { Part, State } from './part'

const RATES = [
  { name: 'Raise', rate: wilson(24, 24) },
  { name: 'Ring', rate: wilson(17, 24) },
  { name: 'No takes', rate: wilson(0, 0) },
]

const RIBBONS = [
  { name: 'path', ribbon: ribbonExample(1, 2) },
  { name: 'path', ribbon: ribbonExample(3, 1) },
  { name: 'held still', ribbon: { kind: 'static', takes: 4, elevationDeg: 62 } as const },
  { name: 'no takes', ribbon: { kind: 'none' } as const },
]

const LANE: Lane = {
  name: 'motion energy',
  unit: '',
  heightPx: 92,
  at: (sample) => ENERGY[sample] ?? 0,
  yOf: (value, height) => rootHeight(value, 9600, height),
  levels: [
    { value: ON_THRESHOLD, text: `starts ${groupDigits(ON_THRESHOLD)}`, dashed: false },
    { value: OFF_THRESHOLD, text: `ends ${groupDigits(OFF_THRESHOLD)}`, dashed: true },
  ],
  reach: '',
  format: groupDigits,
}

export function Ribbons() {
  return (
    <Part name="Ribbon" says="The path of the prop’s tip: wide where it is fast, from its dot on.">
      <div class="gallery-ribbons">
        {RIBBONS.map(({ name, ribbon }, n) => (
          <State key={n} name={name}>
            <RibbonView ribbon={ribbon} size={72} />
            <RibbonView ribbon={ribbon} size={30} />
          </State>
        ))}
      </div>
    </Part>
  )
}

export function Charts() {
  const [cursor, setCursor] = useState(80)
  const start = rateAxisStart(RATES.map(({ rate }) => rate))
  return (
    <>
      <Part name="Rate" says="A dot on its 95 % interval, with percent and count.">
        <RateAxis from={start} />
        {RATES.map(({ name, rate }) => (
          <RateBar key={name} name={name} rate={rate} from={start} />
        ))}
      </Part>
      <Part name="Distances" says="A bar to each gesture, its threshold a tick.">
        <DistanceBars table={DISTANCES} />
      </Part>
      <Part name="Confusion matrix" says="Shade by share, the count in it, right ones outlined.">
        <ConfusionMatrix
          evaluation={EVALUATION}
          hrefOf={() => '#/gallery'}
          picture={(id) => <RibbonView ribbon={ribbonExample(id.length - 3, 2)} size={30} />}
        />
      </Part>
      <Part name="Energy" says="Live: motion energy against its thresholds, with what was cut.">
        <EnergyTrace
          label="Energy of two movements, the second too short"
          picture={{
            energy: ENERGY,
            end: ENERGY.length,
            shown: ENERGY.length,
            onThreshold: ON_THRESHOLD,
            offThreshold: OFF_THRESHOLD,
            cuts: CUTS,
          }}
        />
      </Part>
      <Part name="Lanes" says="Traces over one time axis, with one cursor through all.">
        <Lanes
          lanes={[LANE]}
          rateHz={60}
          span={{ from: 0, to: ENERGY.length }}
          cuts={CUTS}
          measuredTo={ENERGY.length}
          cursor={cursor}
          onCursor={setCursor}
          label="Energy of two movements, the second too short"
        />
      </Part>
    </>
  )
}
