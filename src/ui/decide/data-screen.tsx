import type { DataDecision, LearningCurve } from '../../shared/decide/data-decision'
import {
  curveSentence,
  DATA_ABOUT,
  dataBasis,
  dataSentence,
  missingCurve,
  nextSentence,
} from '../../shared/words/en/data-words'
import { percent, percentRange, plural } from '../../shared/words/en/numbers'
import { RateAxis, RateBar, rateAxisStart } from '../charts'
import { Button, Section } from '../common'
import { CountPlot } from './count-plot'
import { DecideScreen } from './decide-screen'
import { useDecide } from './use-decide'

/** How accuracy grows with takes and testers, and what to record next. */
export function DataScreen() {
  const { data, decideData } = useDecide()
  return (
    <DecideScreen
      title="How much data"
      job={data.value}
      about={DATA_ABOUT}
      action="Draw the learning curves"
      run={() => void decideData()}
    >
      {(decision) => (
        <>
          <p class="decide-sentence">{dataSentence(decision)}</p>
          {decision.next.length > 1 && (
            <ul class="notes">
              {decision.next.slice(1).map((kind) => (
                <li key={kind}>{nextSentence(decision, kind)}</li>
              ))}
            </ul>
          )}
          <Curve decision={decision} curve={decision.byTesters} what="tester" />
          <Curve decision={decision} curve={decision.takes} what="take" />
          <Errors decision={decision} />
          <p class="quiet small">{dataBasis(decision)}</p>
          <Button href="#/moves">Record on Moves</Button>
        </>
      )}
    </DecideScreen>
  )
}

interface CurveProps {
  decision: DataDecision
  curve: LearningCurve | null
  what: 'take' | 'tester'
}

function Curve({ decision, curve, what }: CurveProps) {
  const title = what === 'take' ? 'More takes' : 'More testers'
  if (curve === null) {
    return (
      <Section title={title}>
        <p>{missingCurve(what, decision)}</p>
      </Section>
    )
  }
  const last = curve.points.at(-1)!.rate.value
  const { gain, next } = curve
  return (
    <Section title={title}>
      <p>{curveSentence(curve, what)}</p>
      <CountPlot
        label={`Held-out takes right against ${plural(what, 2).replace('2 ', '')}`}
        points={curve.points.map(({ count, rate }) => ({
          count,
          value: rate.value,
          low: rate.low,
          high: rate.high,
          spoken: `${count}: ${percent(rate.value)} (${percentRange(rate.low, rate.high)})`,
        }))}
        axis={what === 'take' ? 'takes a gesture of each tester' : 'testers in training'}
        names={['right']}
        {...(gain === null
          ? {}
          : {
              estimate: {
                count: next,
                value: Math.min(1, last + gain.value),
                low: Math.max(0, last + gain.low),
                high: Math.min(1, last + gain.high),
              },
            })}
      />
    </Section>
  )
}

function Errors({ decision: { errors, gestures } }: { decision: DataDecision }) {
  const from = rateAxisStart(errors.map(({ rate }) => rate))
  return (
    <Section title="What goes wrong with everything recorded">
      <RateAxis from={from} />
      {errors.map(({ gesture, rate }) => (
        <RateBar key={gesture} name={gestures[gesture]?.name ?? ''} rate={rate} from={from} />
      ))}
    </Section>
  )
}
