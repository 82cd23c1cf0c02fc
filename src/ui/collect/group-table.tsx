import type { GroupRow } from '../../shared/collect/takes-compared'
import { shortNumber } from '../../shared/words/en/numbers'

/** Takes of one hand, rate or phone beside the others. */
export function GroupTable({ rows, what }: { rows: readonly GroupRow[]; what: string }) {
  return (
    <div class="tester-scroll">
      <table class="tester-table group-table" aria-label={`Takes by ${what.toLowerCase()}`}>
        <thead>
          <tr>
            <th scope="col">{what}</th>
            <th scope="col">Testers</th>
            <th scope="col">Takes</th>
            <th scope="col">Distance</th>
            <th scope="col">Far</th>
            <th scope="col">Not cut once</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.name}>
              <th scope="row">{row.name}</th>
              <td>{row.testers}</td>
              <td>{row.takes}</td>
              <td>
                {row.compared === 0 ? 'no data' : shortNumber(row.medianRatio)}
                <span class="group-count">n = {row.compared}</span>
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
