import { useState } from 'preact/hooks'
import { wilson } from '../../shared/statistics/wilson'
import { GALLERY } from '../../shared/words/en/gallery'
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
  { name: GALLERY.raise, rate: wilson(24, 24) },
  { name: GALLERY.ring, rate: wilson(17, 24) },
  { name: GALLERY.noTakes, rate: wilson(0, 0) },
]

const RIBBONS = [
  { name: GALLERY.path, ribbon: ribbonExample(1, 2) },
  { name: GALLERY.path, ribbon: ribbonExample(3, 1) },
  { name: GALLERY.heldStill, ribbon: { kind: 'static', takes: 4, elevationDeg: 62 } as const },
  { name: GALLERY.noTakesNote, ribbon: { kind: 'none' } as const },
]

const LANE: Lane = {
  name: GALLERY.motionEnergy,
  unit: '',
  heightPx: 92,
  at: (sample) => ENERGY[sample] ?? 0,
  yOf: (value, height) => rootHeight(value, 9600, height),
  levels: [
    { value: ON_THRESHOLD, text: GALLERY.starts(ON_THRESHOLD), dashed: false },
    { value: OFF_THRESHOLD, text: GALLERY.ends(OFF_THRESHOLD), dashed: true },
  ],
  reach: '',
  format: groupDigits,
}

export function Ribbons() {
  return (
    <Part name={GALLERY.ribbon} says={GALLERY.ribbonSays}>
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
      <Part name={GALLERY.rate} says={GALLERY.rateSays}>
        <RateAxis from={start} />
        {RATES.map(({ name, rate }) => (
          <RateBar key={name} name={name} rate={rate} from={start} />
        ))}
      </Part>
      <Part name={GALLERY.distances} says={GALLERY.distancesSays}>
        <DistanceBars table={DISTANCES} />
      </Part>
      <Part name={GALLERY.confusionMatrix} says={GALLERY.confusionSays}>
        <ConfusionMatrix
          evaluation={EVALUATION}
          hrefOf={() => '#/gallery'}
          picture={(id) => <RibbonView ribbon={ribbonExample(id.length - 3, 2)} size={30} />}
        />
      </Part>
      <Part name={GALLERY.energy} says={GALLERY.energySays}>
        <EnergyTrace
          label={GALLERY.energyDescribed}
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
      <Part name={GALLERY.lanes} says={GALLERY.lanesSays}>
        <Lanes
          lanes={[LANE]}
          rateHz={60}
          span={{ from: 0, to: ENERGY.length }}
          cuts={CUTS}
          measuredTo={ENERGY.length}
          cursor={cursor}
          onCursor={setCursor}
          label={GALLERY.energyDescribed}
        />
      </Part>
    </>
  )
}
