import type { BackgroundScore } from '../../shared/model/evaluation'
import { shortNumber } from '../../shared/words/en/numbers'
import { PROOF } from '../../shared/words/en/proof'
import { Interval, niceCeiling } from '../charts'
import { Figure, Section } from '../common'

/** False activations in recordings that hold no gesture, with the exact interval. */
export function BackgroundFigures({ score }: { score: BackgroundScore | null }) {
  return (
    <Section title={PROOF.backgroundTitle}>
      {score === null ? <p class="quiet">{PROOF.noBackground}</p> : <Measured score={score} />}
    </Section>
  )
}

function Measured({ score }: { score: BackgroundScore }) {
  const { perHour, low, high, hours, activations, segments } = score
  const max = niceCeiling(high)
  return (
    <>
      <Figure
        label={PROOF.falseActivations}
        value={shortNumber(perHour)}
        unit={PROOF.anHour}
        note={PROOF.poissonInterval(low, high)}
      />
      <div class="hour-axis">
        <Interval
          value={perHour}
          low={low}
          high={high}
          max={max}
          label={PROOF.falseActivationsDescribed(perHour, low, high)}
        />
        <span>0</span>
        <span>{PROOF.hourlyMax(max)}</span>
      </div>
      <p class="small quiet">{PROOF.backgroundCounted(activations, hours, segments)}</p>
    </>
  )
}
