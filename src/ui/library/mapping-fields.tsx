import './library.css'
import type { CsvPreview } from '../../shared/format/csv-import'
import type { AccelUnit, CsvMapping, GyroUnit, Triple } from '../../shared/format/csv-mapping'
import { CSV_IMPORT } from '../../shared/words/en/csv-import'
import { SelectField, useApp } from '../common'
import { NumberText } from './number-text'
import { TimeFields } from './time-fields'

export interface MappingFieldsProps {
  preview: CsvPreview
  mapping: CsvMapping
  onChange: (mapping: CsvMapping) => void
}

const ACCEL_UNITS: { value: AccelUnit; text: string }[] = [
  { value: 'mps2', text: 'm/s²' },
  { value: 'g', text: 'g' },
  { value: 'mg', text: 'mg' },
  { value: 'count', text: CSV_IMPORT.rawCounts },
]

const GYRO_UNITS: { value: GyroUnit | 'none'; text: string }[] = [
  { value: 'dps', text: 'deg/s' },
  { value: 'radps', text: 'rad/s' },
  { value: 'mdps', text: 'mdeg/s' },
  { value: 'count', text: CSV_IMPORT.rawCounts },
  { value: 'none', text: CSV_IMPORT.noGyroscope },
]

/** Which column means what, and in which unit. */
export function MappingFields({ preview, mapping, onChange }: MappingFieldsProps) {
  const columns = columnOptions(preview)
  const { accel } = mapping
  return (
    <>
      <TimeFields columns={columns} mapping={mapping} onChange={onChange} />
      <div class="csv-fields">
        <AxisFields
          labelOf={CSV_IMPORT.accelerometerAxis}
          columns={columns}
          value={accel.columns}
          onChange={(triple) => onChange({ ...mapping, accel: { ...accel, columns: triple } })}
        />
        <SelectField
          label={CSV_IMPORT.accelUnit}
          value={accel.unit}
          options={ACCEL_UNITS}
          onChange={(unit) => onChange({ ...mapping, accel: { ...accel, unit } })}
        />
        {accel.unit === 'count' && (
          <NumberText
            label={CSV_IMPORT.countMg}
            value={accel.nanoPerLsb / 1e6}
            onChange={(mg) => onChange({ ...mapping, accel: { ...accel, nanoPerLsb: mg * 1e6 } })}
          />
        )}
      </div>
      <GyroFields columns={columns} mapping={mapping} onChange={onChange} />
    </>
  )
}

interface GyroFieldsProps extends Omit<MappingFieldsProps, 'preview'> {
  columns: { value: string; text: string }[]
}

function GyroFields({ columns, mapping, onChange }: GyroFieldsProps) {
  const { target } = useApp().library.current.value ?? {}
  const { gyro } = mapping
  const choose = (unit: GyroUnit | 'none') => {
    if (unit === 'none') return onChange({ ...mapping, gyro: null })
    const nanoPerLsb = target?.gyro.nanoPerLsb ?? 35_000_000
    const before = gyro ?? { columns: [0, 1, 2] satisfies Triple, nanoPerLsb }
    onChange({ ...mapping, gyro: { ...before, unit } })
  }
  return (
    <div class="csv-fields">
      {gyro !== null && (
        <AxisFields
          labelOf={CSV_IMPORT.gyroscopeAxis}
          columns={columns}
          value={gyro.columns}
          onChange={(triple) => onChange({ ...mapping, gyro: { ...gyro, columns: triple } })}
        />
      )}
      <SelectField
        label={CSV_IMPORT.gyroUnit}
        value={gyro?.unit ?? 'none'}
        options={GYRO_UNITS}
        onChange={choose}
      />
      {gyro?.unit === 'count' && (
        <NumberText
          label={CSV_IMPORT.countMdegS}
          value={gyro.nanoPerLsb / 1e6}
          onChange={(mdps) => onChange({ ...mapping, gyro: { ...gyro, nanoPerLsb: mdps * 1e6 } })}
        />
      )}
    </div>
  )
}

interface AxisFieldsProps {
  labelOf: (axis: string) => string
  columns: { value: string; text: string }[]
  value: Triple
  onChange: (value: Triple) => void
}

function AxisFields({ labelOf, columns, value, onChange }: AxisFieldsProps) {
  return (
    <>
      {(['x', 'y', 'z'] as const).map((axis, index) => (
        <SelectField
          key={axis}
          label={labelOf(axis)}
          value={String(value[index])}
          options={columns}
          onChange={(column) => {
            const next: Triple = [...value]
            next[index] = Number(column)
            onChange(next)
          }}
        />
      ))}
    </>
  )
}

function columnOptions({ header, columnCount }: CsvPreview): { value: string; text: string }[] {
  return Array.from({ length: columnCount }, (_, column) => ({
    value: String(column),
    text: header?.[column] ?? CSV_IMPORT.column(column + 1),
  }))
}
