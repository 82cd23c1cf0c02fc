import type { PowerSetup } from '../../shared/model/light'
import type { Failure } from '../../shared/model/result'
import { CELL_PRESETS } from '../../shared/power/cells'
import type { Source } from '../../shared/power/sources'
import { LIGHT_POWER } from '../../shared/words/en/light-power'
import { Choice, SelectField } from '../common'
import { NumberField } from '../prop/number-field'
import { Problem } from './problem'
import { SpreadField } from './spread-field'

interface PowerProps {
  power: PowerSetup
  problem: Failure | null
  onChange: (power: PowerSetup) => void
}

const CUSTOM = 'custom'

function sourceText({ text, fromMemory }: Source): string {
  return fromMemory ? LIGHT_POWER.cells.fromMemory(text) : text
}

function withCell(power: PowerSetup, key: string): PowerSetup {
  const preset = CELL_PRESETS.find((one) => one.key === key)
  return preset === undefined
    ? { ...power, cell: CUSTOM }
    : { ...power, cell: key, ...structuredClone(preset.electrical) }
}

/** The cells: a preset with its sources, and every figure to be put right by the data sheet. */
export function CellFields({ power, problem, onChange }: PowerProps) {
  const preset = CELL_PRESETS.find((one) => one.key === power.cell)
  return (
    <>
      <SelectField
        label={LIGHT_POWER.cells.kind}
        value={power.cell}
        options={[
          ...CELL_PRESETS.map(({ key, name }) => ({ value: key, text: name })),
          { value: CUSTOM, text: LIGHT_POWER.cells.otherKind },
        ]}
        onChange={(key) => onChange(withCell(power, key))}
      />
      {preset !== undefined && (
        <p class="small quiet">
          {LIGHT_POWER.cells.sources(sourceText(preset.capacity), sourceText(preset.others))}
        </p>
      )}
      <NumberField
        label={LIGHT_POWER.cells.inSeries}
        value={power.series}
        min={1}
        max={24}
        whole
        onChange={(series) => onChange({ ...power, series })}
      />
      <Problem failure={problem} of="power/series" />
      <SpreadField
        label={LIGHT_POWER.cells.capacity}
        unit="mAh"
        spread={power.capacityMah}
        max={1_000_000}
        onChange={(capacityMah) => onChange({ ...power, capacityMah })}
      />
      <Problem failure={problem} of="power/capacity" />
      <VoltageFields power={power} onChange={onChange} />
      <Problem failure={problem} of="power/volts" />
      <Choice
        legend={LIGHT_POWER.cells.supply}
        value={power.supply}
        options={[
          { value: 'direct', text: LIGHT_POWER.cells.nothing },
          { value: 'boost', text: LIGHT_POWER.cells.boost },
        ]}
        onChange={(supply) => onChange({ ...power, supply })}
      />
      {power.supply === 'boost' && <BoostFields power={power} onChange={onChange} />}
      <Problem failure={problem} of="power/boost" />
    </>
  )
}

function VoltageFields({ power, onChange }: Omit<PowerProps, 'problem'>) {
  const volts = (key: 'freshV' | 'nominalV' | 'endV', label: string) => (
    <NumberField
      label={label}
      unit="V"
      value={power[key]}
      min={0.1}
      max={60}
      onChange={(value) => onChange({ ...power, [key]: value })}
    />
  )
  return (
    <>
      <div class="spread-fields">
        {volts('freshV', LIGHT_POWER.cells.fresh)}
        {volts('nominalV', LIGHT_POWER.cells.nominal)}
        {volts('endV', LIGHT_POWER.cells.empty)}
      </div>
      <div class="spread-fields">
        <NumberField
          label={LIGHT_POWER.cells.inside}
          unit={LIGHT_POWER.spread.ohm}
          value={power.cellOhm}
          min={0}
          max={10_000}
          onChange={(cellOhm) => onChange({ ...power, cellOhm })}
        />
        <NumberField
          label={LIGHT_POWER.cells.madeFor}
          unit="mA"
          value={power.maxMa}
          min={0.001}
          max={1_000_000}
          onChange={(maxMa) => onChange({ ...power, maxMa })}
        />
        <NumberField
          label={LIGHT_POWER.cells.lostAYear}
          unit="%"
          value={power.selfDischargePercent}
          min={0}
          max={100}
          onChange={(selfDischargePercent) => onChange({ ...power, selfDischargePercent })}
        />
      </div>
    </>
  )
}

function BoostFields({ power, onChange }: Omit<PowerProps, 'problem'>) {
  return (
    <div class="prop-pair">
      <NumberField
        label={LIGHT_POWER.cells.gives}
        unit="V"
        value={power.boostV}
        min={0.1}
        max={60}
        onChange={(boostV) => onChange({ ...power, boostV })}
      />
      <NumberField
        label={LIGHT_POWER.cells.efficiency}
        unit="%"
        value={Math.round(power.boostEfficiency * 100)}
        min={30}
        max={100}
        onChange={(percent) => onChange({ ...power, boostEfficiency: percent / 100 })}
      />
    </div>
  )
}

/** What draws on the cells besides the LED. */
export function LoadFields({ power, problem, onChange }: PowerProps) {
  const spread = (
    key: 'processorMa' | 'sensorMa' | 'standbyMa' | 'offUa',
    label: string,
    unit: string,
  ) => (
    <SpreadField
      label={label}
      unit={unit}
      spread={power[key]}
      max={1_000_000}
      onChange={(value) => onChange({ ...power, [key]: value })}
    />
  )
  return (
    <>
      <NumberField
        label={LIGHT_POWER.cells.perHour}
        value={power.answersPerHour}
        min={0}
        max={100_000}
        onChange={(answersPerHour) => onChange({ ...power, answersPerHour })}
      />
      {spread('processorMa', LIGHT_POWER.cells.processor, 'mA')}
      {spread('sensorMa', LIGHT_POWER.cells.sensor, 'mA')}
      {spread('standbyMa', LIGHT_POWER.cells.standby, 'mA')}
      {spread('offUa', LIGHT_POWER.cells.off, 'µA')}
      <Problem failure={problem} of="power/load" />
      <p class="small quiet">{LIGHT_POWER.cells.loadsFromMemory}</p>
    </>
  )
}
