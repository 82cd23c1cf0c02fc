import { CUTS, cutRates } from '../evaluation/cut-rates'
import type { Evaluation, Rate } from '../model/evaluation'
import { wrongCells } from '../present/confused-pair'
import { KIND_WORDS } from '../words/en/matcher-words'
import { countOf, percent, percentRange, plural } from '../words/en/numbers'
import { CUT_WORDS } from '../words/en/trade-off-words'
import { evaluationWarnings, HOLDOUT_WORDS } from '../words/en/trust'
import { instantText } from './head-section'
import { type Html, html, name, section, table } from './html'
import { confusionPlot } from './plots/confusion-plot'
import { plotHtml } from './plots/plot'
import { scoresPlot } from './plots/scores-plot'
import type { Measured, ReportData } from './report-data'

/** A sentence where the library has changed since something was measured. */
export function staleNote({ stale, at }: Measured<unknown>): Html {
  return html`<p>Measured ${instantText(at)}${
    stale
      ? html`. <b>Takes or settings have changed since: these figures are of the library before.</b>`
      : '.'
  }</p>`
}

/** How held-out takes were answered. */
export function evaluationSection({ evaluation }: ReportData): Html {
  if (evaluation === null) return section('Evaluation', html`<p>Not measured.</p>`)
  const { value } = evaluation
  return section(
    'Evaluation',
    html`<p>${HOLDOUT_WORDS[value.holdout].sentence} In each round scaling, templates and thresholds were learned again without the takes held out; takes ran through the whole stream, cutting included. Intervals of shares are 95 % by Wilson’s formula.</p>`,
    staleNote(evaluation),
    evaluationWarnings(value).map((warning) => html`<p><b>${warning}</b></p>`),
    table(
      'All held-out takes',
      ['', 'share', 'n', '95 % interval'],
      [rateRow('understood', value.accuracy), rateRow('rejected', value.rejected)],
    ),
    plotHtml(confusionPlot(value)),
    mistakes(value),
    plotHtml(scoresPlot(value)),
    scoreTable(value),
    cutTable(value),
    roundTable(value),
    leftOut(value),
  )
}

function rateRow(word: string | Html, rate: Rate) {
  return [word, ...rateCells(rate)]
}

/** Share, count and interval of a rate. */
function rateCells(rate: Rate): string[] {
  if (rate.n === 0) return ['no data', '0', '']
  return [percent(rate.value), countOf(rate), percentRange(rate.low, rate.high)]
}

function mistakes(evaluation: Evaluation): Html {
  const cells = wrongCells(evaluation)
  if (cells.length === 0) return html`<p>No take was answered with another gesture or none.</p>`
  const nameOf = (index: number | null) =>
    index === null ? html`none` : name(evaluation.gestures[index]?.name ?? '')
  return html`<p>Not understood: ${cells.map(
    ({ truth, answer, count }, i) =>
      html`${i === 0 ? '' : ', '}${count} × ${nameOf(truth)} → ${nameOf(answer)}`,
  )}.</p>`
}

function scoreTable({ scores }: Evaluation): Html {
  return table(
    'Gesture by gesture. Recall: of the takes performed, how many were answered so. Precision: of the answers, how many were right.',
    ['Gesture', 'recall', 'n', '95 % interval', 'precision', 'n', '95 % interval'],
    scores.map((score) => [
      name(score.name),
      ...rateCells(score.recall),
      ...rateCells(score.precision),
    ]),
  )
}

function cutTable({ outcomes }: Evaluation): Html {
  const rates = cutRates(outcomes)
  return table(
    'How takes were cut out of the stream. Of a split one the longest piece decides; missed, too long and too short ones are answered with none.',
    ['Cut', 'share', 'n', '95 % interval'],
    CUTS.map((cut) => rateRow(CUT_WORDS[cut], rates[cut])),
  )
}

function roundTable({ folds }: Evaluation): Html {
  return table(
    'Rounds',
    ['Held out', 'takes tested', 'takes trained on', 'compared by'],
    folds.map((fold) => [
      name(fold.heldOut),
      fold.testTakes,
      fold.trainTakes,
      KIND_WORDS[fold.matcher],
    ]),
  )
}

function leftOut({ skipped }: Evaluation): Html | null {
  if (skipped.length === 0) return null
  const counts = new Map<string, number>()
  for (const { reason } of skipped) counts.set(reason, (counts.get(reason) ?? 0) + 1)
  return html`<p>Left out: ${[...counts].map(
    ([reason, count], i) => html`${i === 0 ? '' : '; '}${plural('take', count)}, ${reason}`,
  )}.</p>`
}
