import type { Evaluation, TakeOutcome } from '../../shared/model/evaluation'
import { PROOF } from '../../shared/words/en/proof'
import { outcomeText } from '../../shared/words/en/verdict'
import type { Cell } from '../charts'
import { route, Section } from '../common'
import { LongList } from '../common/long-list'

/** Height of a row, px, as proof.css has it. */
const ROW_PX = 49

/** The takes of one cell, each with the held-out decision; a tap replays it. */
export function CellTakes({ evaluation, cell }: { evaluation: Evaluation; cell: Cell }) {
  const outcomes = evaluation.outcomes.filter(
    (outcome) => outcome.truth === cell.truth && outcome.answer === cell.answer,
  )
  return (
    <Section title={cellTitle(evaluation, cell)} aside={<span>{outcomes.length}</span>}>
      <LongList
        items={outcomes}
        keyOf={(outcome) => outcome.takeId}
        rowPx={ROW_PX}
        listClass="outcomes"
        row={(outcome) => <OutcomeRow outcome={outcome} evaluation={evaluation} />}
      />
    </Section>
  )
}

function cellTitle(evaluation: Evaluation, { truth, answer }: Cell): string {
  const performed = evaluation.gestures[truth]?.name ?? ''
  if (answer === null) return PROOF.answeredNone(performed)
  if (answer === truth) return PROOF.understood(performed)
  return PROOF.answered(performed, evaluation.gestures[answer]?.name ?? '')
}

function OutcomeRow({ outcome, evaluation }: { outcome: TakeOutcome; evaluation: Evaluation }) {
  return (
    <a class="outcome" href={route('replay', outcome.takeId)}>
      <b>{outcome.testerCode}</b>
      <span>{outcomeText(outcome, evaluation.gestures)}</span>
      <span class="quiet" aria-hidden="true">
        ›
      </span>
    </a>
  )
}
