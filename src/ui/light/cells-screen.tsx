import { useMemo } from 'preact/hooks'
import { lightOf } from '../../shared/light/library-light'
import { lightUse } from '../../shared/light/use'
import type { Library } from '../../shared/model/library'
import type { LedSetup, PowerSetup } from '../../shared/model/light'
import { cautions } from '../../shared/power/cautions'
import { checkPower } from '../../shared/power/check-power'
import { alternatives, EMITTER_NAMES, emitterMa } from '../../shared/power/headroom'
import { type LightUse, runtimeCurve } from '../../shared/power/runtime'
import { shortNumber } from '../../shared/words/en/numbers'
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
    <Screen title="Cells" back={route('light')}>
      {use !== null && <Lasting power={sound} led={light.led} use={use} />}
      <HeadroomSection
        power={sound}
        led={light.led}
        take={(next, led) => void app.light.update({ power: next, led })}
      />
      <Section title="Cells">
        <CellFields power={power} problem={problem} onChange={change} />
      </Section>
      <Section title="What draws on them">
        <LoadFields power={power} problem={problem} onChange={change} />
      </Section>
      <Section title="Mind">
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
    <Section title="How long they last">
      <RowTable rows={powerTable(power, led, use)} />
      <RuntimePlot points={points} now={power.answersPerHour} />
      <p class="small quiet">
        Estimated: LED from the effects as they play, currents as entered below. Measure your board
        before you promise hours.
      </p>
    </Section>
  )
}

function RowTable({ rows }: { rows: PowerRow[] }) {
  return (
    <table class="spread-table">
      <thead>
        <tr>
          <th scope="col">
            <span class="unseen">quantity</span>
          </th>
          <th scope="col">least</th>
          <th scope="col">typical</th>
          <th scope="col">most</th>
          <th scope="col">
            <span class="unseen">unit</span>
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
    <Section title="Current of the LED over the cells’ life">
      {sentences.length === 0 ? (
        <p>Every colour has headroom until the cells are empty.</p>
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
          EMITTER_NAMES.map(
            (name, i) =>
              `${name} ${shortNumber(emitterMa(other.power, other.led, other.led.emitters[i]!, stage).typ)}`,
          ).join(', ')
        return (
          <li key={other.name} class="finding">
            <p>
              With {other.name}: {at('fresh')} mA from fresh cells, {at('empty')} mA from empty
              ones.
            </p>
            <Button onClick={() => take(other.power, other.led)}>Take it, with resistors</Button>
          </li>
        )
      })}
    </ul>
  )
}
