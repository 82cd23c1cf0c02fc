import type { BackgroundScore } from '../../shared/model/evaluation'
import { plural, shortNumber } from '../../shared/words/en/numbers'
import { Interval, niceCeiling } from '../charts'
import { Figure, Section } from '../common'

/** False activations in recordings that hold no gesture, with the exact interval. */
export function BackgroundFigures({ score }: { score: BackgroundScore | null }) {
  return (
    <Section title="When nobody means it">
      {score === null ? (
        <p class="quiet">
          No background was recorded, so false activations are not known. Walk and talk with the
          prop for ten minutes on Moves.
        </p>
      ) : (
        <Measured score={score} />
      )}
    </Section>
  )
}

function Measured({ score }: { score: BackgroundScore }) {
  const { perHour, low, high, hours, activations, segments } = score
  const range = `${shortNumber(low)} to ${shortNumber(high)} an hour`
  const max = niceCeiling(high)
  return (
    <>
      <Figure
        label="False activations"
        value={shortNumber(perHour)}
        unit="an hour"
        note={`95 % interval ${range} (exact Poisson)`}
      />
      <div class="hour-axis">
        <Interval
          value={perHour}
          low={low}
          high={high}
          max={max}
          label={`False activations: ${shortNumber(perHour)} an hour, 95 % interval ${range}`}
        />
        <span>0</span>
        <span>{shortNumber(max)} an hour</span>
      </div>
      <p class="small quiet">
        {plural('activation', activations)} in {shortNumber(hours)} h of background;{' '}
        {plural('movement', segments)} were cut out of it. Never trained on where it is counted.
      </p>
    </>
  )
}
