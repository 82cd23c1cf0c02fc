import type { Evaluation } from '../../shared/model/evaluation'
import type { MatcherKind } from '../../shared/model/recogniser-model'
import { confusedPairSentence, mostConfusedPair } from '../../shared/present/confused-pair'
import { percent } from '../../shared/words/en/numbers'
import { PROOF } from '../../shared/words/en/proof'
import { evaluationWarnings } from '../../shared/words/en/trust'
import { ConfusionMatrix, RateBar } from '../charts'
import { NextStep, Notice, Section } from '../common'
import { GestureRibbon } from '../ribbon'
import { BackgroundFigures } from './background-score'
import { Cutting } from './cutting'
import { Mistakes } from './mistakes'
import { cellRoute, pairRoute } from './routes'
import { Scores } from './scores'
import { TradeOff } from './trade-off'

/** Everything an evaluation measured, the answer first. */
export function Result({ evaluation, stale }: { evaluation: Evaluation; stale: boolean }) {
  const { accuracy } = evaluation
  return (
    <>
      <Section title={PROOF.understoodTitle}>
        <p class="proof-figure">
          {percent(accuracy.value)} <span>{PROOF.takesNote(accuracy)}</span>
        </p>
        <p class="small quiet">{PROOF.measuredHow(evaluation)}</p>
        <RateBar name={PROOF.rateUnderstood} rate={accuracy} />
        <RateBar name={PROOF.rateRejected} rate={evaluation.rejected} />
        {evaluationWarnings(evaluation).map((warning) => (
          <Notice key={warning}>
            <p>{warning}</p>
          </Notice>
        ))}
      </Section>
      <Pair evaluation={evaluation} />
      <Section title={PROOF.confusionTitle}>
        <ConfusionMatrix
          evaluation={evaluation}
          hrefOf={(cell) => cellRoute(evaluation, cell)}
          picture={(gestureId) => <GestureRibbon gestureId={gestureId} size={30} />}
        />
        <Mistakes evaluation={evaluation} />
      </Section>
      <Scores evaluation={evaluation} />
      <BackgroundFigures score={evaluation.background} />
      <TradeOff evaluation={evaluation} stale={stale} />
      <Cutting evaluation={evaluation} />
      <Folds evaluation={evaluation} />
    </>
  )
}

/** The pair worth looking at; what to do about it is said at the foot, in amber. */
function Pair({ evaluation }: { evaluation: Evaluation }) {
  const pair = mostConfusedPair(evaluation)
  if (pair === null) return null
  const text = confusedPairSentence(evaluation, pair)
  const href = pairRoute(evaluation, pair.first, pair.second)
  return <NextStep quiet text={text} action={PROOF.lookAtTakes} href={href} />
}

const SHORT_KINDS: Record<MatcherKind, string> = {
  template: PROOF.templates,
  kernel: PROOF.kernels,
  both: PROOF.both,
}

function Folds({ evaluation }: { evaluation: Evaluation }) {
  const { folds, skipped } = evaluation
  return (
    <Section title={PROOF.howMeasured}>
      <p class="small quiet">{PROOF.foldsLead}</p>
      <table class="folds">
        <thead>
          <tr>
            <th scope="col">{PROOF.heldOut}</th>
            <th scope="col">{PROOF.tested}</th>
            <th scope="col">{PROOF.trainedOn}</th>
            <th scope="col">{PROOF.with}</th>
          </tr>
        </thead>
        <tbody>
          {folds.map((fold) => (
            <tr key={fold.heldOut}>
              <th scope="row">{fold.heldOut}</th>
              <td>{fold.testTakes}</td>
              <td>{fold.trainTakes}</td>
              <td>{SHORT_KINDS[fold.matcher]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {skipped.length > 0 && (
        <details>
          <summary>{PROOF.leftOut(skipped.length)}</summary>
          <ul class="notes">
            {reasonCounts(skipped).map(([reason, count]) => (
              <li key={reason}>{PROOF.leftOutBecause(count, reason)}</li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  )
}

function reasonCounts(skipped: Evaluation['skipped']): [string, number][] {
  const counts = new Map<string, number>()
  for (const { reason } of skipped) counts.set(reason, (counts.get(reason) ?? 0) + 1)
  return [...counts]
}
