import { NO_EFFECT_HZ } from '../../shared/light/flicker'
import { lightOf } from '../../shared/light/library-light'
import { checkPwm } from '../../shared/light/safety'
import type { Library } from '../../shared/model/library'
import type { Emitter, LedSetup, PowerSetup } from '../../shared/model/light'
import type { Failure } from '../../shared/model/result'
import { checkLed } from '../../shared/power/check-power'
import { EMITTER_NAMES, wantedResistor } from '../../shared/power/headroom'
import { GENERIC_LEDS } from '../../shared/power/leds'
import { LIGHT_POWER } from '../../shared/words/en/light-power'
import { levelsSentence } from '../../shared/words/en/light-words'
import { Button, route, Screen, Section, useApp } from '../common'
import { NumberField } from '../prop/number-field'
import { Problem } from './problem'
import { FindingRow } from './safety-list'
import { SpreadField } from './spread-field'
import { useDraft } from './use-draft'
import { usePlayer } from './use-player'

interface LedProps {
  led: LedSetup
  problem: Failure | null
  onChange: (led: LedSetup) => void
}

/** How the LED is driven: timer, forward voltages, resistors, limit of the current. */
export function LedScreen({ library }: { library: Library }) {
  const app = useApp()
  const light = lightOf(library)
  const [led, problem, change] = useDraft(
    light.led,
    (next) => checkLed(next, light.power, library.target.clockHz),
    (next) => app.light.update({ led: next }),
  )
  return (
    <Screen title={LIGHT_POWER.led.title} back={route('light')}>
      <PwmSection library={library} led={led} problem={problem} onChange={change} />
      {EMITTER_NAMES.map((name, index) => (
        <EmitterSection
          key={name}
          name={name}
          index={index as 0 | 1 | 2}
          led={led}
          power={light.power}
          problem={problem}
          onChange={change}
        />
      ))}
      <Section title={LIGHT_POWER.led.together}>
        <NumberField
          label={LIGHT_POWER.led.limit}
          unit="mA"
          value={led.limitMa}
          min={0}
          max={65_535}
          whole
          hint={LIGHT_POWER.led.limitHint}
          onChange={(limitMa) => change({ ...led, limitMa })}
        />
        <NumberField
          label={LIGHT_POWER.led.driver}
          unit={LIGHT_POWER.spread.ohm}
          value={led.driverOhm}
          min={0}
          max={10_000}
          onChange={(driverOhm) => change({ ...led, driverOhm })}
        />
        <p class="small quiet">{LIGHT_POWER.led.eyes}</p>
      </Section>
    </Screen>
  )
}

function PwmSection({ library, led, problem, onChange }: LedProps & { library: Library }) {
  const player = usePlayer()
  const finding = checkPwm({ ...library, light: { ...lightOf(library), led } })
  const compare =
    player === null
      ? []
      : Array.from({ length: 256 }, (_, i) => player.pwm(player.luminance(i), led.pwmBits))
  // The fastest the clock allows with these bits, or fewer bits until it is fast enough.
  const mend = () => {
    let bits = led.pwmBits
    while (bits > 4 && NO_EFFECT_HZ * 2 ** bits > library.target.clockHz) bits--
    onChange({ ...led, pwmHz: NO_EFFECT_HZ, pwmBits: bits })
  }
  return (
    <Section title={LIGHT_POWER.led.dimming}>
      <div class="prop-pair">
        <NumberField
          label={LIGHT_POWER.led.pwm}
          unit="Hz"
          value={led.pwmHz}
          min={0}
          max={1_000_000}
          onChange={(pwmHz) => onChange({ ...led, pwmHz })}
        />
        <NumberField
          label={LIGHT_POWER.led.timer}
          unit={LIGHT_POWER.led.bits}
          value={led.pwmBits}
          min={4}
          max={16}
          whole
          onChange={(pwmBits) => onChange({ ...led, pwmBits })}
        />
      </div>
      <Problem failure={problem} of="led/pwm" />
      {led.pwmHz > 0 && (
        <ul class="findings">
          <FindingRow finding={finding}>
            {!finding.passes && (
              <Button onClick={mend}>{LIGHT_POWER.led.setHz(NO_EFFECT_HZ)}</Button>
            )}
          </FindingRow>
        </ul>
      )}
      {compare.length > 0 && <p class="small quiet">{levelsSentence(led.pwmBits, compare)}</p>}
    </Section>
  )
}

function EmitterSection(
  props: LedProps & { name: (typeof EMITTER_NAMES)[number]; index: 0 | 1 | 2; power: PowerSetup },
) {
  const { name, index, led, power, problem, onChange } = props
  const emitter = led.emitters[index]
  const change = (next: Partial<Emitter>) => {
    const emitters = led.emitters.map((one, i) => (i === index ? { ...one, ...next } : one))
    onChange({ ...led, emitters: emitters as LedSetup['emitters'] })
  }
  const { ohm, e24, e12 } = wantedResistor(power, led, emitter)
  const generic = GENERIC_LEDS[name]
  return (
    <Section title={LIGHT_POWER.led.emitters[name]}>
      <SpreadField
        label={LIGHT_POWER.led.forwardVoltage}
        unit="V"
        spread={emitter.forwardV}
        max={60}
        onChange={(forwardV) => change({ forwardV })}
      />
      <p class="small quiet">
        {LIGHT_POWER.led.generic(generic.forwardV, generic.typical.text, generic.limits.text)}
      </p>
      <div class="prop-pair">
        <NumberField
          label={LIGHT_POWER.led.current}
          unit="mA"
          value={emitter.currentMa}
          min={0.1}
          max={255}
          onChange={(currentMa) => change({ currentMa })}
        />
        <NumberField
          label={LIGHT_POWER.led.resistor}
          unit={LIGHT_POWER.spread.ohm}
          value={emitter.resistorOhm}
          min={0}
          max={1_000_000}
          onChange={(resistorOhm) => change({ resistorOhm })}
        />
      </div>
      <p class="small quiet">{LIGHT_POWER.led.standard(ohm, e24, e12)}</p>
      <Problem failure={problem} of={`led/${name}`} />
      {e24 !== emitter.resistorOhm && (
        <Button onClick={() => change({ resistorOhm: e24 })}>{LIGHT_POWER.led.take(e24)}</Button>
      )}
    </Section>
  )
}
