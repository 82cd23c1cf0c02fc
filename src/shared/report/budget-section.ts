import { budgetOf } from '../budget/budget'
import { partOfTarget } from '../budget/parts'
import { budgetWarnings } from '../budget/warnings'
import { matcherKind } from '../model/recogniser-model'
import { misfits, modelFacts } from '../present/model-facts'
import { budgetRows } from '../words/en/budget-words'
import { KIND_WORDS } from '../words/en/matcher-words'
import { percent, plural } from '../words/en/numbers'
import { facts, type Html, html, section, table } from './html'
import type { ReportData } from './report-data'

/** What the model is and what it asks of the target; each figure says how it is known. */
export function budgetSection({ trained, trainingFailure, library }: ReportData): Html {
  if (trained === null) {
    return section('Model and budget', html`<p>No model: ${trainingFailure}</p>`)
  }
  const part = partOfTarget(library.target)
  const warnings = [
    ...misfits(trained, library.target),
    ...budgetWarnings(budgetOf(trained.model, part), part).map(({ message }) => message),
  ]
  return section(
    'Model and budget',
    facts([
      ['Compared by', KIND_WORDS[matcherKind(trained.model)]],
      ['Takes used', plural('take', trained.usedTakeIds.length)],
      ['Takes without a single movement', trained.uncutTakeIds.length],
    ]),
    [trained.choice, ...trained.notes]
      .filter((note) => note !== '')
      .map((note) => html`<p>${note}</p>`),
    warnings.map((warning) => html`<p><b>${warning}</b></p>`),
    table(
      'Counted: exact, from the model. Measured: on an emulated core of this kind, with the demo library. Estimated: computed from these with cycles or currents that were not measured.',
      ['', 'value', 'known', 'of the target', 'what it rests on'],
      [
        ...modelFacts(trained, library.target).map(({ label, value, known, share, note }) => {
          return [label, value, known, shareText(share), note]
        }),
        ...budgetRows(trained.model, part).map(({ label, value, known, share, note }) => {
          return [label, value, known, shareText(share), note]
        }),
      ],
    ),
  )
}

function shareText(share: number | null): string {
  return share === null ? '' : percent(share)
}
