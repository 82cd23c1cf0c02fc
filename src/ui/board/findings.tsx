import type { Finding, Passed } from '../../shared/board/check/finding'
import { plural } from '../../shared/words/en/numbers'
import { Mark, Notice, Section } from '../common'
import { EvidencePlot } from './evidence-plot'
import { useBoard } from './use-board'

/** What the check says of the logs at hand: the first suspect in full, the others to open. */
export function Findings() {
  const { bench } = useBoard()
  const result = bench.result.value
  if (result === null) return null
  const { findings, passed } = result
  const asked = passed.filter(({ notChecked }) => notChecked === null)
  return (
    <Section
      title="What was found"
      aside={bench.simulated.value ? <Mark kind="simulated" /> : undefined}
    >
      {findings.length === 0 && (
        <Notice live>
          <p>
            Nothing speaks against this board: {plural('question', asked.length)} asked.
            {asked.length < passed.length && ' Those that could not be asked stand below.'}
          </p>
        </Notice>
      )}
      {findings.length > 1 && (
        <p class="quiet">
          {plural('thing', findings.length)}, likeliest cause of the others first. Mend the first
          one and log again.
        </p>
      )}
      {findings.map((finding, index) => (
        <FindingCard key={finding.code} finding={finding} open={index === 0} />
      ))}
      {passed.length > 0 && <PassedList passed={passed} />}
    </Section>
  )
}

function FindingCard({ finding, open }: { finding: Finding; open: boolean }) {
  const { title, seen, causes, next, evidence } = finding
  return (
    <details class="board-finding" open={open}>
      <summary>
        <h3>{title}</h3>
      </summary>
      <p>{seen}</p>
      <EvidencePlot evidence={evidence} label={`Evidence: ${title}`} />
      <h4>Most likely, in this order</h4>
      <ol>
        {causes.map((cause) => (
          <li key={cause}>{cause}</li>
        ))}
      </ol>
      <h4>Measure next</h4>
      <ol>
        {next.map((what) => (
          <li key={what}>{what}</li>
        ))}
      </ol>
    </details>
  )
}

function PassedList({ passed }: { passed: readonly Passed[] }) {
  return (
    <ul class="passed">
      {passed.map(({ what, notChecked }) => (
        <li key={what} class={notChecked === null ? '' : 'quiet'}>
          <span>{what}</span>
          <span class="small">{notChecked === null ? 'fine' : `not asked: ${notChecked}`}</span>
        </li>
      ))}
    </ul>
  )
}
