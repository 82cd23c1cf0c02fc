import { LIBRARY_FORMAT_VERSION } from '../model/library'
import { MODEL_VERSION } from '../model/recogniser-model'
import { REPORT_CHECK } from '../words/en/report-check'
import { type Html, html, section, table, withCode } from './html'
import type { ReportData } from './report-data'

/** What another engineer needs to come to the same figures. */
export function checkSection({ versions, trained, evaluation, library }: ReportData): Html {
  const { app, commit, coreHash, libraryHash } = versions
  const holdout = evaluation?.value.holdout ?? 'tester'
  const matcher = library.training.matcher ?? 'template'
  return section(
    REPORT_CHECK.title,
    table(
      REPORT_CHECK.caption,
      ['', ''],
      [
        ['Movewright', commit === null ? app : withCode(REPORT_CHECK.version(app, commit))],
        [REPORT_CHECK.formats, `${LIBRARY_FORMAT_VERSION}, ${MODEL_VERSION}`],
        [REPORT_CHECK.libraryFile, code(libraryHash)],
        [REPORT_CHECK.modelBytes, trained === null ? REPORT_CHECK.noModel : code(trained.hash)],
        [REPORT_CHECK.coreSources, code(coreHash)],
      ],
    ),
    html`<ol>
${REPORT_CHECK.steps({ holdout, matcher }).map(
  (step) => html`<li>${withCode(step)}</li>
`,
)}</ol>`,
  )
}

function code(text: string): Html {
  return html`<code>${text}</code>`
}
