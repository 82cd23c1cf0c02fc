import {
  basisWords,
  costWords,
  REMEDY_LETTERS,
  REMEDY_NAMES,
  reachWords,
  verticalWords,
} from '../words/en/grip-words'
import { REPORT_MEASURED } from '../words/en/report-measured'
import { staleNote } from './evaluation-section'
import { type Html, html, section } from './html'
import { gripPlot } from './plots/grip-plot'
import { plotHtml } from './plots/plot'
import type { ReportData } from './report-data'

/** Recall that a reach is told for. */
const LIMIT = 0.9

/** How far the prop may turn in the hand. */
export function gripSection({ grip }: ReportData): Html {
  if (grip === null)
    return section(REPORT_MEASURED.grip, html`<p>${REPORT_MEASURED.notMeasured}</p>`)
  const { remedies } = grip.value
  return section(
    REPORT_MEASURED.grip,
    staleNote(grip),
    plotHtml(gripPlot(grip.value, 'roll')),
    html`<ul>${remedies.map(
      (score) =>
        html`<li>${REMEDY_LETTERS[score.remedy]}: ${REMEDY_NAMES[score.remedy]}. ${reachWords(score, LIMIT)} ${costWords(score, remedies)}</li>
`,
    )}</ul>`,
    html`<p>${verticalWords(grip.value)}</p>`,
    plotHtml(gripPlot(grip.value, 'tilt')),
    html`<p>${basisWords(grip.value)}</p>`,
  )
}
