import type { Evaluation } from '../../shared/model/evaluation'
import { PROOF } from '../../shared/words/en/proof'
import { RateAxis, RateBar, rateAxisStart } from '../charts'
import { Section } from '../common'
import { GestureRibbon } from '../ribbon'

/** Recall and precision of each gesture, with their intervals. */
export function Scores({ evaluation }: { evaluation: Evaluation }) {
  const from = rateAxisStart(evaluation.scores.flatMap((score) => [score.recall, score.precision]))
  return (
    <Section title={PROOF.scoresTitle}>
      <p class="small quiet">{PROOF.scoresLead}</p>
      <div class="score">
        <span class="score-picture" />
        <RateAxis from={from} />
      </div>
      {evaluation.scores.map((score) => (
        <div key={score.gestureId} class="score">
          <GestureRibbon gestureId={score.gestureId} size={44} />
          <div>
            <h3>{score.name}</h3>
            <RateBar name={PROOF.recall} rate={score.recall} from={from} />
            <RateBar name={PROOF.precision} rate={score.precision} from={from} />
          </div>
        </div>
      ))}
    </Section>
  )
}
