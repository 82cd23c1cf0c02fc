import type { SensorRange, Target } from '../../shared/model/target'
import {
  CUSTOM_PRESET,
  rangeText,
  reachText,
  withFamily,
} from '../../shared/present/target-choices'
import { type SensorFamily, sensorFamily, TARGET_PRESETS } from '../../shared/target/presets'
import { MAX_RATE_HZ, MIN_RATE_HZ } from '../../shared/target/validate-target'
import { TARGET_FORMS } from '../../shared/words/en/target-forms'
import { SelectField } from '../common'
import { NumberField } from './number-field'

export interface TargetFormProps {
  target: Target
  onChange: (target: Target) => void
}

/** Sensor: family, ranges with what one count means, output data rate. */
export function SensorForm({ target, onChange }: TargetFormProps) {
  const family = sensorFamily(target.preset)
  return (
    <>
      <SelectField
        label={TARGET_FORMS.sensorFamily}
        value={family?.key ?? CUSTOM_PRESET}
        options={[
          ...TARGET_PRESETS.map(({ key, name }) => ({ value: key, text: shortName(name) })),
          { value: CUSTOM_PRESET, text: TARGET_FORMS.otherFromItsDataSheet },
        ]}
        onChange={(key) => onChange(withFamily(target, key))}
        hint={TARGET_FORMS.sensitivityHint(bracketOf(family))}
      />
      {family === null ? (
        <CustomSensor target={target} onChange={onChange} />
      ) : (
        <FamilySensor family={family} target={target} onChange={onChange} />
      )}
    </>
  )
}

/** Names carry their key figures in brackets; a phone's select shows the words alone. */
function shortName(name: string): string {
  return name.replace(/ \(.*$/, '')
}

function bracketOf(family: SensorFamily | null): string | null {
  return family?.name.match(/\((.*)\)$/)?.[1] ?? null
}

function FamilySensor(props: TargetFormProps & { family: SensorFamily }) {
  const { family, target, onChange } = props
  return (
    <>
      <RangeField
        label={TARGET_FORMS.accelRange}
        unit="g"
        ranges={family.accelRanges}
        chosen={target.accel}
        onChange={(accel) => onChange({ ...target, accel })}
      />
      <RangeField
        label={TARGET_FORMS.gyroRange}
        unit="deg/s"
        ranges={family.gyroRanges}
        chosen={target.gyro}
        onChange={(gyro) => onChange({ ...target, gyro })}
      />
      <SelectField
        label={TARGET_FORMS.rate}
        value={String(target.rateHz)}
        options={family.ratesHz.map((rate) => ({ value: String(rate), text: `${rate} Hz` }))}
        onChange={(rate) => onChange({ ...target, rateHz: Number(rate) })}
        {...rateHint(target.rateHz)}
      />
    </>
  )
}

/** A phone delivers at most 60 readings a second; a faster board sees what no take has shown. */
function rateHint(rateHz: number): { hint?: string } {
  if (rateHz <= 60) return {}
  return { hint: TARGET_FORMS.fasterThanPhone }
}

interface RangeFieldProps {
  label: string
  unit: 'g' | 'deg/s'
  ranges: readonly SensorRange[]
  chosen: SensorRange
  onChange: (range: SensorRange) => void
}

function RangeField({ label, unit, ranges, chosen, onChange }: RangeFieldProps) {
  const reach = reachText(chosen, unit)
  return (
    <SelectField
      label={label}
      value={String(chosen.fullScale)}
      options={ranges.map((range) => ({
        value: String(range.fullScale),
        text: rangeText(range, unit),
      }))}
      onChange={(scale) => {
        const range = ranges.find((candidate) => String(candidate.fullScale) === scale)
        if (range !== undefined) onChange({ ...range })
      }}
      {...(reach === '' ? {} : { hint: reach })}
    />
  )
}

function CustomSensor({ target, onChange }: TargetFormProps) {
  const { accel, gyro } = target
  return (
    <>
      <div class="prop-pair">
        <NumberField
          label={TARGET_FORMS.accelRangeFree}
          unit="g"
          value={accel.fullScale}
          min={1}
          max={400}
          onChange={(fullScale) => onChange({ ...target, accel: { ...accel, fullScale } })}
        />
        <NumberField
          label={TARGET_FORMS.oneCountIs}
          unit="mg"
          value={accel.nanoPerLsb / 1e6}
          min={0.001}
          max={100}
          onChange={(mg) =>
            onChange({ ...target, accel: { ...accel, nanoPerLsb: Math.round(mg * 1e6) } })
          }
        />
      </div>
      <div class="prop-pair">
        <NumberField
          label={TARGET_FORMS.gyroRangeFree}
          unit="deg/s"
          value={gyro.fullScale}
          min={15}
          max={10_000}
          onChange={(fullScale) => onChange({ ...target, gyro: { ...gyro, fullScale } })}
        />
        <NumberField
          label={TARGET_FORMS.oneCountIs}
          unit="mdeg/s"
          value={gyro.nanoPerLsb / 1e6}
          min={0.1}
          max={4000}
          onChange={(step) =>
            onChange({ ...target, gyro: { ...gyro, nanoPerLsb: Math.round(step * 1e6) } })
          }
        />
      </div>
      <NumberField
        label={TARGET_FORMS.rate}
        unit="Hz"
        value={target.rateHz}
        min={MIN_RATE_HZ}
        max={MAX_RATE_HZ}
        onChange={(rateHz) => onChange({ ...target, rateHz })}
        {...rateHint(target.rateHz)}
      />
    </>
  )
}
