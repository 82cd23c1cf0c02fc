import { BOARD_LOGS } from '../../shared/words/en/board-logs'
import { CsvTable } from '../library/csv-table'
import { MappingFields } from '../library/mapping-fields'
import type { ChosenColumns } from './board-screen'

export interface ColumnsProps {
  columns: ChosenColumns
  onChange: (columns: ChosenColumns) => void
  open?: boolean
}

/** What the columns are taken for; closed, as the guess is mostly right. */
export function Columns({ columns: { preview, mapping }, onChange, open = false }: ColumnsProps) {
  const time =
    mapping.time.kind === 'column'
      ? BOARD_LOGS.columns.timeIn(mapping.time.unit)
      : BOARD_LOGS.columns.noTime
  const gyro =
    mapping.gyro === null
      ? BOARD_LOGS.columns.noGyroscope
      : BOARD_LOGS.columns.gyroscopeIn(mapping.gyro.unit)
  return (
    <details class="board-columns" open={open}>
      <summary>{BOARD_LOGS.columns.summary(time, mapping.accel.unit, gyro)}</summary>
      <div class="board-columns-body">
        <CsvTable preview={preview} mapping={mapping} />
        {preview.notes.length > 0 && <p class="quiet small">{preview.notes.join(' ')}</p>}
        <MappingFields
          preview={preview}
          mapping={mapping}
          onChange={(next) => onChange({ preview, mapping: next })}
        />
      </div>
    </details>
  )
}
