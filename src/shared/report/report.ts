import type { Ribbon } from '../ribbon/ribbon'
import { LANGUAGE } from '../words/en/language'
import { REPORT_HEAD } from '../words/en/report-head'
import { backgroundSection } from './background-section'
import { budgetSection } from './budget-section'
import { checkSection } from './check-section'
import { evaluationSection } from './evaluation-section'
import { gripSection } from './grip-section'
import { headSection } from './head-section'
import { Html, html } from './html'
import { librarySection } from './library-section'
import { lightSection } from './light-section'
import { activationsPlot } from './plots/activations-plot'
import { confusionPlot } from './plots/confusion-plot'
import { gripPlot } from './plots/grip-plot'
import type { Plot } from './plots/plot'
import { ribbonPlot } from './plots/ribbon-plot'
import { scoresPlot } from './plots/scores-plot'
import { tradeOffPlot } from './plots/trade-off-plot'
import type { ReportData } from './report-data'
import { FILE_STYLE, REPORT_STYLE } from './report-style'
import { targetSection } from './target-section'

/** The report as the inside of a page that has `REPORT_STYLE`. */
export function reportBody(data: ReportData): string {
  return html`<article class="report" lang="${LANGUAGE.tag}">
${headSection(data)}${evaluationSection(data)}${backgroundSection(data)}${librarySection(data)}${targetSection(data)}${gripSection(data)}${budgetSection(data)}${lightSection(data)}${checkSection(data)}</article>`
    .text
}

/**
 * The report as a file that stands alone: no script, nothing fetched, whatever shows it. Its policy
 * says so too.
 */
export function reportFile(data: ReportData): string {
  return html`<!doctype html>
<html lang="${LANGUAGE.tag}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${REPORT_HEAD.title(data.library.name)}</title>
<style>${new Html(REPORT_STYLE + FILE_STYLE)}</style>
</head>
<body>
${new Html(reportBody(data))}
</body>
</html>
`.text
}

const RIBBON_PX = 320
const NO_RIBBON: Ribbon = { kind: 'none' }

/** Every plot that has figures, and each gesture's ribbon. */
export function reportPlots(data: ReportData): Plot[] {
  const plots: (Plot | null)[] = []
  const { evaluation, grip, library, ribbons } = data
  if (evaluation !== null) {
    const { value } = evaluation
    plots.push(confusionPlot(value), scoresPlot(value), tradeOffPlot(value))
    plots.push(value.background === null ? null : activationsPlot(value.background))
  }
  if (grip !== null) plots.push(gripPlot(grip.value, 'roll'), gripPlot(grip.value, 'tilt'))
  for (const { id, name } of library.gestures) {
    const ribbon = ribbons.get(id) ?? NO_RIBBON
    plots.push(ribbon.kind === 'none' ? null : ribbonPlot(id, name, ribbon, RIBBON_PX))
  }
  return plots.filter((plot) => plot !== null)
}
