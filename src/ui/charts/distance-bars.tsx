import type { DistanceRow, DistanceTable } from '../../shared/present/distances'
import { CHARTS } from '../../shared/words/en/charts'
import { groupDigits } from '../../shared/words/en/numbers'

const ROLE_TEXT = { nearest: CHARTS.nearest, 'runner-up': CHARTS.next, other: '' } as const

/** One bar a gesture, its threshold a tick: a bar that passes the tick is too far. */
export function DistanceBars({ table }: { table: DistanceTable }) {
  return (
    <table class="distances">
      <caption class="unseen">{CHARTS.distancesDescribed}</caption>
      <thead class="unseen">
        <tr>
          <th>{CHARTS.gesture}</th>
          <th>{CHARTS.distanceAndThreshold}</th>
          <th>{CHARTS.figures}</th>
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row) => (
          <Row key={row.gestureId} row={row} axisEnd={table.axisEnd} />
        ))}
      </tbody>
    </table>
  )
}

function Row({ row, axisEnd }: { row: DistanceRow; axisEnd: number }) {
  const at = (value: number) => `${Math.min((value / axisEnd) * 100, 100).toFixed(2)}%`
  const open = row.distance > axisEnd ? ' distance-open' : ''
  return (
    <tr class={`distance distance-${row.role}`}>
      <th scope="row">
        {row.name}
        {row.role !== 'other' && <small>{ROLE_TEXT[row.role]}</small>}
      </th>
      <td class="distance-picture">
        <div
          class={`distance-bar${open}`}
          style={{ '--distance': at(row.distance), '--threshold': at(row.threshold) }}
        >
          <i />
          <b />
        </div>
      </td>
      <td class="distance-figures">
        {groupDigits(row.distance)} {row.within ? '≤' : '>'} {groupDigits(row.threshold)}
      </td>
    </tr>
  )
}
