import { CLAIMS } from '../present/claims'
import { REPORT_MEASURED } from '../words/en/report-measured'
import { claimSentence } from '../words/en/trade-off-words'
import { type Html, html, section, table } from './html'
import { activationsPlot } from './plots/activations-plot'
import { plotHtml } from './plots/plot'
import { tradeOffPlot } from './plots/trade-off-plot'
import type { ReportData } from './report-data'

/** What answers when nobody means it, and what fewer of those cost. */
export function backgroundSection({ evaluation }: ReportData): Html {
  const title = REPORT_MEASURED.falseActivations
  const score = evaluation?.value.background ?? null
  if (evaluation === null || score === null) {
    return section(title, html`<p>${REPORT_MEASURED.noBackground}</p>`)
  }
  const curve = tradeOffPlot(evaluation.value)
  return section(
    title,
    table(REPORT_MEASURED.backgroundCaption, REPORT_MEASURED.backgroundHeads, [
      [
        REPORT_MEASURED.backgroundRow,
        score.activations,
        three(score.hours),
        three(score.perHour),
        REPORT_MEASURED.range(three(score.low), three(score.high)),
      ],
    ]),
    plotHtml(activationsPlot(score)),
    html`<p>${REPORT_MEASURED.cutOut(score.segments)} ${CLAIMS.map(
      (rate) => html`${claimSentence(score, rate)} `,
    )}</p>`,
    curve === null ? null : plotHtml(curve),
    html`<p>${REPORT_MEASURED.aboutCurve}</p>`,
  )
}

/** Three digits: enough to check the interval by. */
function three(value: number): string {
  return String(Number(value.toPrecision(3)))
}
