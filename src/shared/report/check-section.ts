import { LIBRARY_FORMAT_VERSION } from '../model/library'
import { MODEL_VERSION } from '../model/recogniser-model'
import { type Html, html, section, table } from './html'
import type { ReportData } from './report-data'

/** What another engineer needs to come to the same figures. */
export function checkSection({ versions, trained, evaluation, library }: ReportData): Html {
  const { app, commit, coreHash, libraryHash } = versions
  const holdout = evaluation?.value.holdout ?? 'tester'
  const matcher = library.training.matcher ?? 'template'
  return section(
    'To check it',
    table(
      'Versions, and SHA-256 of what was used',
      ['', ''],
      [
        ['Movewright', commit === null ? app : html`${app}, commit ${code(commit)}`],
        ['Library format, model format', `${LIBRARY_FORMAT_VERSION}, ${MODEL_VERSION}`],
        ['Library file', code(libraryHash)],
        ['Model bytes', trained === null ? 'no model' : code(trained.hash)],
        ['Core sources', code(coreHash)],
      ],
    ),
    html`<ol>
<li>Export the library file on the phone this report was made on; <code>sha256sum LIBRARY.zip</code> prints the first of these sums.</li>
<li><code>npm run evaluate -- LIBRARY.zip --holdout ${holdout} --matcher ${matcher} --report report.html</code> trains and measures again, in Node, with the same code: every figure above must come out the same.</li>
<li>The second sum stands in <code>model/model.h</code> of the firmware bundle. <code>LC_ALL=C; cat core/*.[ch] | sha256sum</code> in the bundle prints the third.</li>
<li><code>make test</code> in the bundle compiles the core and compares its answers with the phone’s, byte for byte.</li>
</ol>`,
  )
}

function code(text: string): Html {
  return html`<code>${text}</code>`
}
