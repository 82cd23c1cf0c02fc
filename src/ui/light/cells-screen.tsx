import { useMemo } from 'preact/hooks'
import { lightOf } from '../../shared/light/library-light'
import { lightUse } from '../../shared/light/use'
import type { Library } from '../../shared/model/library'
import type { LedSetup, PowerSetup } from '../../shared/model/light'
import { cautions } from '../../shared/power/cautions'
import { checkPower } from '../../shared/power/check-power'
import { alternatives, emitterMa } from '../../shared/power/headroom'
import { type LightUse, runtimeCurve } from '../../shared/power/runtime'
import { LIGHT_POWER } from '../../shared/words/en/light-power'
import {
  currentTable,
  headroomSentences,
  type PowerRow,
  powerTable,
} from '../../shared/words/en/power-words'
import { Button, Notice, route, Screen, Section, useApp } from '../common'
import { CellFields, LoadFields } from './cell-fields'
import { RuntimePlot } from './runtime-plot'
import { useDraft } from './use-draft'
import { usePlayer } from './use-player'

/** How long the cells last, and what they cannot feed. */
export function CellsScreen({ library }: { library: Library }) {
  const app = useApp()
  const light = lightOf(library)
  const [power, problem, change] = useDraft(light.power, checkPower, (next) =>
    app.light.update({ power: next }),
  )
  const sound = problem === null ? power : light.power
  const player = usePlayer()
  const use = useMemo(() => (player === null ? null : lightUse(player, library)), [player, library])
  return (
    <Screen title={LIGHT_POWER.cells.title} back={route('light')}>
      {use !== null && <Lasting power={sound} led={light.led} use={use} />}
      <HeadroomSection
        power={sound}
        led={light.led}
        take={(next, led) => void app.light.update({ power: next, led })}
      />
      <Section title={LIGHT_POWER.cells.title}>
        <CellFields power={power} problem={problem} onChange={change} />
      </Section>
      <Section title={LIGHT_POWER.cells.draws}>
        <LoadFields power={power} problem={problem} onChange={change} />
      </Section>
      <Section title={LIGHT_POWER.cells.mind}>
        <ul class="notes">
          {cautions(sound).map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Section>
    </Screen>
  )
}

function Lasting({ power, led, use }: { power: PowerSetup; led: LedSetup; use: LightUse }) {
  const most = Math.max(600, 2 * power.answersPerHour)
  const points = useMemo(() => runtimeCurve(power, led, use, most), [power, led, use, most])
  return (
    <Section title={LIGHT_POWER.cells.lasting}>
      <RowTable rows={powerTable(power, led, use)} />
      <RuntimePlot points={points} now={power.answersPerHour} />
      <p class="small quiet">{LIGHT_POWER.cells.estimated}</p>
    </Section>
  )
}

function RowTable({ rows }: { rows: PowerRow[] }) {
  return (
    <table class="spread-table">
      <thead>
        <tr>
          <th scope="col">
            <span class="unseen">{LIGHT_POWER.spread.quantity}</span>
          </th>
          <th scope="col">{LIGHT_POWER.spread.min}</th>
          <th scope="col">{LIGHT_POWER.spread.typ}</th>
          <th scope="col">{LIGHT_POWER.spread.max}</th>
          <th scope="col">
            <span class="unseen">{LIGHT_POWER.spread.unit}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ label, unit, values, strong }) => (
          <tr key={label} class={strong ? 'strong' : ''}>
            <th scope="row">{label}</th>
            {values.map((value, i) => (
              <td key={i}>{value}</td>
            ))}
            <td class="quiet">{unit}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

interface HeadroomProps {
  power: PowerSetup
  led: LedSetup
  take: (power: PowerSetup, led: LedSetup) => void
}

function HeadroomSection({ power, led, take }: HeadroomProps) {
  const sentences = headroomSentences(power, led)
  return (
    <Section title={LIGHT_POWER.cells.headroom}>
      {sentences.length === 0 ? (
        <p>{LIGHT_POWER.cells.enough}</p>
      ) : (
        <>
          <Notice tone="trouble">
            {sentences.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </Notice>
          <Alternatives power={power} led={led} take={take} />
        </>
      )}
      <RowTable rows={currentTable(power, led)} />
    </Section>
  )
}

/** More cells or a converter, with resistors for them, and what each colour then gets. */
function Alternatives({ power, led, take }: HeadroomProps) {
  return (
    <ul class="findings">
      {alternatives(power, led).map((other) => {
        const at = (stage: 'fresh' | 'empty') =>
          other.led.emitters.map((one) => emitterMa(other.power, other.led, one, stage).typ)
        return (
          <li key={other.name} class="finding">
            <p>{LIGHT_POWER.cells.alternative(other.name, at('fresh'), at('empty'))}</p>
            <Button onClick={() => take(other.power, other.led)}>{LIGHT_POWER.cells.takeIt}</Button>
          </li>
        )
      })}
    </ul>
  )
}
