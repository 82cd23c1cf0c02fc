import { countLibrary } from '../present/library-counts'
import {
  countOf,
  durationText,
  percent,
  percentRange,
  plural,
  shortNumber,
} from '../words/en/numbers'
import { type Html, html, name } from './html'
import type { ReportData } from './report-data'
import { unmeasured } from './unmeasured'

/** The day and time of an instant, in UTC. */
export function instantText(at: string | null): string {
  if (at === null || !Number.isFinite(Date.parse(at))) return 'at a time that is not known'
  return `${new Date(at).toISOString().slice(0, 16).replace('T', ' ')} UTC`
}

/** What it is a report of, the answer first, then what it cannot say. */
export function headSection(data: ReportData): Html {
  const { library, recordings, evaluation, madeAt } = data
  const counts = countLibrary(library.gestures, recordings)
  const background =
    counts.backgroundMs > 0 ? `, ${durationText(counts.backgroundMs)} of background` : ''
  return html`<header>
<h1>${name(library.name)}</h1>
<p>Recognition report: ${plural('gesture', library.gestures.length)}, ${plural('take', counts.takes)} of ${plural('tester', counts.testers.length)}${background}. Made ${instantText(madeAt)}.</p>
${library.generated && html`<p class="mark">Generated library: made by the app from a seed, not by people.</p>`}
<div class="answers">
${evaluation === null ? answer('Held-out takes understood', 'not measured', '') : answers(data)}
</div>
<h2>Not measured</h2>
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
  const who = holdout === 'tester' ? 'testers held out' : 'takes held out'
  return html`${answer(
    'Held-out takes understood',
    percent(accuracy.value),
    `${countOf(accuracy)} takes, ${who}; 95 % interval ${percentRange(accuracy.low, accuracy.high)}`,
  )}${
    background === null
      ? answer('False activations', 'not known', 'no background recorded')
      : answer(
          'False activations',
          `${shortNumber(background.perHour)} an hour`,
          `${background.activations} in ${shortNumber(background.hours)} h; 95 % interval ${shortNumber(background.low)} to ${shortNumber(background.high)} (exact Poisson)`,
        )
  }`
}

function answer(label: string, value: string, note: string): Html {
  return html`<div><span>${label}</span><b>${value}</b><small>${note}</small></div>
`
}
