import type { GroupRow } from '../../shared/collect/takes-compared'
import { COLLECT_TESTERS } from '../../shared/words/en/collect-testers'
import { shortNumber } from '../../shared/words/en/numbers'

/** Takes of one hand, rate or phone beside the others. */
export function GroupTable({ rows, what }: { rows: readonly GroupRow[]; what: string }) {
  return (
    <div class="tester-scroll">
      <table class="tester-table group-table" aria-label={COLLECT_TESTERS.groups.takesBy(what)}>
        <thead>
          <tr>
            <th scope="col">{what}</th>
            <th scope="col">{COLLECT_TESTERS.groups.testers}</th>
            <th scope="col">{COLLECT_TESTERS.groups.takes}</th>
            <th scope="col">{COLLECT_TESTERS.groups.distance}</th>
            <th scope="col">{COLLECT_TESTERS.groups.far}</th>
            <th scope="col">{COLLECT_TESTERS.groups.notCutOnce}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.name}>
              <th scope="row">{row.name}</th>
              <td>{row.testers}</td>
              <td>{row.takes}</td>
              <td>
                {row.compared === 0 ? COLLECT_TESTERS.groups.noData : shortNumber(row.medianRatio)}
                <span class="group-count">{COLLECT_TESTERS.groups.compared(row.compared)}</span>
              </td>
              <td>{row.far}</td>
              <td>{row.notCutOnce}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
