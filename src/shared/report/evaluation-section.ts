import { CUTS, cutRates } from '../evaluation/cut-rates'
import type { Evaluation, Rate } from '../model/evaluation'
import { wrongCells } from '../present/confused-pair'
import { instantText } from '../words/en/instant'
import { KIND_WORDS } from '../words/en/matcher-words'
import { countOf, percent, percentRange } from '../words/en/numbers'
import { REPORT_MEASURED } from '../words/en/report-measured'
import { CUT_WORDS } from '../words/en/trade-off-words'
import { evaluationWarnings, HOLDOUT_WORDS } from '../words/en/trust'
import { type Html, html, name, section, table } from './html'
import { confusionPlot } from './plots/confusion-plot'
import { plotHtml } from './plots/plot'
import { scoresPlot } from './plots/scores-plot'
import type { Measured, ReportData } from './report-data'

/** A sentence where the library has changed since something was measured. */
export function staleNote({ stale, at }: Measured<unknown>): Html {
  return html`<p>${REPORT_MEASURED.measuredAt(instantText(at))}${
    stale && html` <b>${REPORT_MEASURED.stale}</b>`
  }</p>`
}

/** How held-out takes were answered. */
export function evaluationSection({ evaluation }: ReportData): Html {
  if (evaluation === null)
    return section(REPORT_MEASURED.evaluation, html`<p>${REPORT_MEASURED.notMeasured}</p>`)
  const { value } = evaluation
  return section(
    REPORT_MEASURED.evaluation,
    html`<p>${HOLDOUT_WORDS[value.holdout].sentence} ${REPORT_MEASURED.aboutRounds}</p>`,
    staleNote(evaluation),
    evaluationWarnings(value).map((warning) => html`<p><b>${warning}</b></p>`),
    table(REPORT_MEASURED.allTakes, REPORT_MEASURED.rateHeads(''), [
      rateRow(REPORT_MEASURED.understood, value.accuracy),
      rateRow(REPORT_MEASURED.rejected, value.rejected),
    ]),
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
  if (rate.n === 0) return [REPORT_MEASURED.noData, '0', '']
  return [percent(rate.value), countOf(rate), percentRange(rate.low, rate.high)]
}

function mistakes(evaluation: Evaluation): Html {
  const cells = wrongCells(evaluation)
  if (cells.length === 0) return html`<p>${REPORT_MEASURED.noMistakes}</p>`
  const nameOf = (index: number | null) =>
    index === null ? html`${REPORT_MEASURED.none}` : name(evaluation.gestures[index]?.name ?? '')
  return html`<p>${REPORT_MEASURED.notUnderstood} ${cells.map(
    ({ truth, answer, count }, i) =>
      html`${i === 0 ? '' : ', '}${count} × ${nameOf(truth)} → ${nameOf(answer)}`,
  )}.</p>`
}

function scoreTable({ scores }: Evaluation): Html {
  return table(
    REPORT_MEASURED.scoresCaption,
    REPORT_MEASURED.scoreHeads,
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
    REPORT_MEASURED.cutCaption,
    REPORT_MEASURED.rateHeads(REPORT_MEASURED.cut),
    CUTS.map((cut) => rateRow(CUT_WORDS[cut], rates[cut])),
  )
}

function roundTable({ folds }: Evaluation): Html {
  return table(
    REPORT_MEASURED.rounds,
    REPORT_MEASURED.roundHeads,
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
  return html`<p>${REPORT_MEASURED.leftOut} ${[...counts].map(
    ([reason, count], i) =>
      html`${i === 0 ? '' : '; '}${REPORT_MEASURED.takesLeftOut(count, reason)}`,
  )}.</p>`
}
