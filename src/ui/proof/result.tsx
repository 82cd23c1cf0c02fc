import type { Evaluation } from '../../shared/model/evaluation'
import type { MatcherKind } from '../../shared/model/recogniser-model'
import { confusedPairSentence, mostConfusedPair } from '../../shared/present/confused-pair'
import { countOf, percent, percentRange, plural } from '../../shared/words/en/numbers'
import { evaluationWarnings, measuredSentence } from '../../shared/words/en/trust'
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
      <Section title="Held-out takes understood">
        <p class="proof-figure">
          {percent(accuracy.value)} <span>{countOf(accuracy)} takes</span>
        </p>
        <p class="small quiet">
          {measuredSentence(evaluation)} 95 % interval {percentRange(accuracy.low, accuracy.high)}.
        </p>
        <RateBar name="understood" rate={accuracy} />
        <RateBar name="rejected" rate={evaluation.rejected} />
        {evaluationWarnings(evaluation).map((warning) => (
          <Notice key={warning}>
            <p>{warning}</p>
          </Notice>
        ))}
      </Section>
      <Pair evaluation={evaluation} />
      <Section title="What was taken for what">
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
  return <NextStep quiet text={text} action="Look at these takes" href={href} />
}

const SHORT_KINDS: Record<MatcherKind, string> = {
  template: 'templates',
  kernel: 'kernels',
  both: 'both',
}

function Folds({ evaluation }: { evaluation: Evaluation }) {
  const { folds, skipped } = evaluation
  return (
    <Section title="How it was measured">
      <p class="small quiet">
        In each fold scaling, templates and thresholds are learned again without the takes held out.
      </p>
      <table class="folds">
        <thead>
          <tr>
            <th scope="col">Held out</th>
            <th scope="col">tested</th>
            <th scope="col">trained on</th>
            <th scope="col">with</th>
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
          <summary>{plural('take', skipped.length)} left out</summary>
          <ul class="notes">
            {reasonCounts(skipped).map(([reason, count]) => (
              <li key={reason}>
                {plural('take', count)}: {reason}
              </li>
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
