import './library.css'
import type { CsvPreview } from '../../shared/format/csv-import'
import type { CsvMapping } from '../../shared/format/csv-mapping'
import { CSV_IMPORT } from '../../shared/words/en/csv-import'
import { columnUse } from './column-use'

const ROWS = 4

/** The first rows of the file, with what each column is taken for. */
export function CsvTable({ preview, mapping }: { preview: CsvPreview; mapping: CsvMapping }) {
  const columns = Array.from({ length: preview.columnCount }, (_, column) => column)
  return (
    // A wide table scrolls inside its frame; focus lets the keyboard do it too.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: scrolled by the arrow keys
    <section class="csv-table" tabIndex={0} aria-label={CSV_IMPORT.firstRows}>
      <table>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {preview.header?.[column] ?? CSV_IMPORT.column(column + 1)}
              </th>
            ))}
          </tr>
          <tr class="csv-use">
            {columns.map((column) => (
              <td key={column}>{columnUse(mapping, column) ?? '–'}</td>
            ))}
          </tr>
        </thead>
        <tbody>
          {preview.rows.slice(0, ROWS).map((row) => (
            <tr key={row.join()}>
              {columns.map((column) => (
                <td key={column}>{row[column] ?? ''}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
