import type { CsvMapping, TimeUnit } from '../../shared/format/csv-mapping'
import { CSV_IMPORT } from '../../shared/words/en/csv-import'
import { SelectField } from '../common'
import { NumberText } from './number-text'

const UNITS: { value: TimeUnit; text: string }[] = [
  { value: 's', text: 's' },
  { value: 'ms', text: 'ms' },
  { value: 'us', text: 'µs' },
  { value: 'ns', text: 'ns' },
]
/** Offered where the log has no column of time. */
const COMMON_RATE_HZ = 100

export interface TimeFieldsProps {
  columns: { value: string; text: string }[]
  mapping: CsvMapping
  onChange: (mapping: CsvMapping) => void
}

/** Time from a column, or from an even rate. */
export function TimeFields({ columns, mapping, onChange }: TimeFieldsProps) {
  const { time } = mapping
  const unit = time.kind === 'column' ? time.unit : 'ms'
  return (
    <div class="csv-fields">
      <SelectField
        label={CSV_IMPORT.time}
        value={time.kind === 'column' ? String(time.column) : 'rate'}
        options={[...columns, { value: 'rate', text: CSV_IMPORT.evenRate }]}
        onChange={(chosen) =>
          onChange({
            ...mapping,
            time:
              chosen === 'rate'
                ? { kind: 'rate', rateHz: COMMON_RATE_HZ }
                : { kind: 'column', column: Number(chosen), unit },
          })
        }
      />
      {time.kind === 'column' ? (
        <SelectField
          label={CSV_IMPORT.timeUnit}
          value={time.unit}
          options={UNITS}
          onChange={(next) => onChange({ ...mapping, time: { ...time, unit: next } })}
        />
      ) : (
        <NumberText
          label={CSV_IMPORT.rate}
          value={time.rateHz}
          onChange={(rateHz) => onChange({ ...mapping, time: { kind: 'rate', rateHz } })}
        />
      )}
    </div>
  )
}
