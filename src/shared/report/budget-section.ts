import { budgetOf } from '../budget/budget'
import { partOfTarget } from '../budget/parts'
import { budgetWarnings } from '../budget/warnings'
import { matcherKind } from '../model/recogniser-model'
import { misfits, modelFacts } from '../present/model-facts'
import { budgetRows } from '../words/en/budget-words'
import { KNOWN_WORDS } from '../words/en/known-words'
import { KIND_WORDS } from '../words/en/matcher-words'
import { percent } from '../words/en/numbers'
import { REPORT_BUDGET } from '../words/en/report-budget'
import { facts, type Html, html, section, table } from './html'
import type { ReportData } from './report-data'

/** What the model is and what it asks of the target; each figure says how it is known. */
export function budgetSection({ trained, trainingFailure, library }: ReportData): Html {
  if (trained === null) {
    return section(REPORT_BUDGET.title, html`<p>${REPORT_BUDGET.noModel(trainingFailure)}</p>`)
  }
  const part = partOfTarget(library.target)
  const warnings = [
    ...misfits(trained, library.target),
    ...budgetWarnings(budgetOf(trained.model, part), part).map(({ message }) => message),
  ]
  return section(
    REPORT_BUDGET.title,
    facts([
      [REPORT_BUDGET.comparedBy, KIND_WORDS[matcherKind(trained.model)]],
      [REPORT_BUDGET.takesUsed, REPORT_BUDGET.takes(trained.usedTakeIds.length)],
      [REPORT_BUDGET.takesUncut, trained.uncutTakeIds.length],
    ]),
    [trained.choice, ...trained.notes]
      .filter((note) => note !== '')
      .map((note) => html`<p>${note}</p>`),
    warnings.map((warning) => html`<p><b>${warning}</b></p>`),
    table(REPORT_BUDGET.caption, REPORT_BUDGET.heads, [
      ...modelFacts(trained, library.target).map(({ label, value, known, share, note }) => {
        return [label, value, KNOWN_WORDS[known], shareText(share), note]
      }),
      ...budgetRows(trained.model, part).map(({ label, value, known, share, note }) => {
        return [label, value, KNOWN_WORDS[known], shareText(share), note]
      }),
    ]),
  )
}

function shareText(share: number | null): string {
  return share === null ? '' : percent(share)
}
