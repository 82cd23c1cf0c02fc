import { plural } from '../words/en/numbers'
import { CLAIMS, claimSentence } from '../words/en/trade-off-words'
import { type Html, html, section, table } from './html'
import { activationsPlot } from './plots/activations-plot'
import { plotHtml } from './plots/plot'
import { tradeOffPlot } from './plots/trade-off-plot'
import type { ReportData } from './report-data'

/** What answers when nobody means it, and what fewer of those cost. */
export function backgroundSection({ evaluation }: ReportData): Html {
  const title = 'False activations'
  const score = evaluation?.value.background ?? null
  if (evaluation === null || score === null) {
    return section(title, html`<p>Not known: no background was measured.</p>`)
  }
  const curve = tradeOffPlot(evaluation.value)
  return section(
    title,
    table(
      'In recordings that hold no gesture, never trained on in the round that counts them. The interval is exact Poisson (Garwood 1936).',
      ['', 'activations', 'hours', 'an hour', '95 % interval, an hour'],
      [
        [
          'false activations',
          score.activations,
          three(score.hours),
          three(score.perHour),
          `${three(score.low)} to ${three(score.high)}`,
        ],
      ],
    ),
    plotHtml(activationsPlot(score)),
    html`<p>${plural('movement', score.segments)} were cut out of the background. ${CLAIMS.map(
      (rate) => html`${claimSentence(score, rate)} `,
    )}</p>`,
    curve === null ? null : plotHtml(curve),
    html`<p>A greater threshold factor accepts more. The dot is the factor set, with both intervals; a point that is chosen for its figures looks better than it is.</p>`,
  )
}

/** Three digits: enough to check the interval by. */
function three(value: number): string {
  return String(Number(value.toPrecision(3)))
}
