import { countLibrary } from '../present/library-counts'
import { instantText } from '../words/en/instant'
import { percent } from '../words/en/numbers'
import { REPORT_HEAD } from '../words/en/report-head'
import { type Html, html, name } from './html'
import type { ReportData } from './report-data'
import { unmeasured } from './unmeasured'

/** What it is a report of, the answer first, then what it cannot say. */
export function headSection(data: ReportData): Html {
  const { library, recordings, evaluation, madeAt } = data
  const counts = countLibrary(library.gestures, recordings)
  const holds = REPORT_HEAD.holds({
    gestures: library.gestures.length,
    takes: counts.takes,
    testers: counts.testers.length,
    backgroundMs: counts.backgroundMs,
  })
  return html`<header>
<h1>${name(library.name)}</h1>
<p>${holds} ${REPORT_HEAD.madeAt(instantText(madeAt))}</p>
${library.generated && html`<p class="mark">${REPORT_HEAD.generated}</p>`}
<div class="answers">
${evaluation === null ? answer(REPORT_HEAD.understood, REPORT_HEAD.notMeasured, '') : answers(data)}
</div>
<h2>${REPORT_HEAD.unmeasured}</h2>
<ul>${unmeasured(data).map(
    (sentence) => html`<li>${sentence}</li>
`,
  )}</ul>
</header>
`
}

function answers({ evaluation }: ReportData): Html | null {
  if (evaluation === null) return null
  const { accuracy, background, holdout } = evaluation.value
  return html`${answer(
    REPORT_HEAD.understood,
    percent(accuracy.value),
    REPORT_HEAD.ofTakes(accuracy, holdout),
  )}${
    background === null
      ? answer(REPORT_HEAD.falseActivations, REPORT_HEAD.notKnown, REPORT_HEAD.noBackground)
      : answer(
          REPORT_HEAD.falseActivations,
          REPORT_HEAD.anHour(background.perHour),
          REPORT_HEAD.inHours(background),
        )
  }`
}

function answer(label: string, value: string, note: string): Html {
  return html`<div><span>${label}</span><b>${value}</b><small>${note}</small></div>
`
}
