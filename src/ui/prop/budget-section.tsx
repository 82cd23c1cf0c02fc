import { useState } from 'preact/hooks'
import { budgetOf } from '../../shared/budget/budget'
import { PARTS, type Part, partOfTarget } from '../../shared/budget/parts'
import { budgetWarnings, savings } from '../../shared/budget/warnings'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import type { Target } from '../../shared/model/target'
import { type BudgetRow, budgetRows, savingLine } from '../../shared/words/en/budget-words'
import { KNOWN_WORDS } from '../../shared/words/en/known-words'
import { PROP } from '../../shared/words/en/prop'
import { Notice, Section, SelectField, useApp } from '../common'

/** What the current model asks of a microcontroller, for any of a few kinds of them. */
export function BudgetSection({ target }: { target: Target }) {
  const job = useApp().model.value
  if (job.state !== 'done') return null
  return (
    <Section title={PROP.budget}>
      <Budget model={job.value.model} target={target} />
    </Section>
  )
}

function Budget({ model, target }: { model: RecogniserModel; target: Target }) {
  const own = partOfTarget(target)
  const parts = [own, ...PARTS]
  const [key, setKey] = useState(own.key)
  const part = parts.find((one) => one.key === key) ?? own
  return (
    <>
      <SelectField
        label={PROP.microcontroller}
        value={part.key}
        options={parts.map((one) => ({ value: one.key, text: one.name }))}
        onChange={setKey}
        hint={hintOf(part)}
      />
      <Warnings model={model} part={part} />
      <dl class="facts">
        {budgetRows(model, part).map((row) => (
          <Row key={row.label} row={row} />
        ))}
      </dl>
      <p class="quiet">{PROP.budgetLegend}</p>
    </>
  )
}

function hintOf(part: Part): string {
  return PROP.costsOf(part.clockHz / 1e6, part.resembles, PROP.cores[part.core])
}

function Warnings({ model, part }: { model: RecogniserModel; part: Part }) {
  const warned = budgetWarnings(budgetOf(model, part), part)
  if (warned.length === 0) return null
  const ways = savings(model, part, warned)
  return (
    <Notice tone="trouble">
      {warned.map(({ what, message }) => (
        <p key={what}>{message}</p>
      ))}
      {ways.length > 0 && (
        <>
          <p>{PROP.wouldHelp}</p>
          <ul class="notes">
            {ways.map((way) => (
              <li key={way.what}>{savingLine(way)}</li>
            ))}
          </ul>
        </>
      )}
    </Notice>
  )
}

function Row({ row }: { row: BudgetRow }) {
  return (
    <div class="fact">
      <dt>{row.label}</dt>
      <dd>
        {row.value} <small class={`known known-${row.known}`}>{KNOWN_WORDS[row.known]}</small>
      </dd>
      {row.share !== null && (
        <dd class="fact-bar" aria-hidden="true">
          <i style={{ '--share': `${Math.min(row.share * 100, 100).toFixed(1)}%` }} />
        </dd>
      )}
      <dd class="fact-note">{row.note}</dd>
    </div>
  )
}
