import type { Finding, Passed } from '../../shared/board/check/finding'
import { BOARD_FOUND } from '../../shared/words/en/board-found'
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
      title={BOARD_FOUND.title}
      aside={bench.simulated.value ? <Mark kind="simulated" /> : undefined}
    >
      {findings.length === 0 && (
        <Notice live>
          <p>
            {BOARD_FOUND.nothing(asked.length)}
            {asked.length < passed.length && ` ${BOARD_FOUND.someNotAsked}`}
          </p>
        </Notice>
      )}
      {findings.length > 1 && <p class="quiet">{BOARD_FOUND.several(findings.length)}</p>}
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
      <EvidencePlot evidence={evidence} label={BOARD_FOUND.evidence(title)} />
      <h4>{BOARD_FOUND.causes}</h4>
      <ol>
        {causes.map((cause) => (
          <li key={cause}>{cause}</li>
        ))}
      </ol>
      <h4>{BOARD_FOUND.next}</h4>
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
          <span class="small">
            {notChecked === null ? BOARD_FOUND.fine : BOARD_FOUND.notAsked(notChecked)}
          </span>
        </li>
      ))}
    </ul>
  )
}
