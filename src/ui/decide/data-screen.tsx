import type { DataDecision, LearningCurve } from '../../shared/decide/data-decision'
import {
  curveSentence,
  DATA_ABOUT,
  dataBasis,
  dataSentence,
  missingCurve,
  nextSentence,
} from '../../shared/words/en/data-words'
import { DECIDE_SCREENS } from '../../shared/words/en/decide-screens'
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
      title={DECIDE_SCREENS.data.title}
      job={data.value}
      about={DATA_ABOUT}
      action={DECIDE_SCREENS.data.action}
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
          <Button href="#/moves">{DECIDE_SCREENS.data.record}</Button>
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
  const title = what === 'take' ? DECIDE_SCREENS.data.moreTakes : DECIDE_SCREENS.data.moreTesters
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
        label={DECIDE_SCREENS.data.plots[what]}
        points={curve.points.map(({ count, rate }) => ({
          count,
          value: rate.value,
          low: rate.low,
          high: rate.high,
          spoken: DECIDE_SCREENS.data.point(count, rate),
        }))}
        axis={DECIDE_SCREENS.data.axes[what]}
        names={[DECIDE_SCREENS.data.right]}
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
    <Section title={DECIDE_SCREENS.data.errors}>
      <RateAxis from={from} />
      {errors.map(({ gesture, rate }) => (
        <RateBar key={gesture} name={gestures[gesture]?.name ?? ''} rate={rate} from={from} />
      ))}
    </Section>
  )
}
