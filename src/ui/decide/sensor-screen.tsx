import { useState } from 'preact/hooks'
import {
  type SensorDecision,
  type SettingResult,
  SWEEP_AXES,
  type SweepAxis,
} from '../../shared/decide/sensor-decision'
import { DECIDE_SCREENS } from '../../shared/words/en/decide-screens'
import {
  changeWords,
  costLine,
  gyroSentence,
  limitSentences,
  SENSOR_ABOUT,
  SWEEP_TITLES,
  sensorBasis,
  sensorSentence,
  settingLine,
  VERDICT_WORDS,
} from '../../shared/words/en/sensor-words'
import { Choice, Section } from '../common'
import { DecideScreen } from './decide-screen'
import { LossAxis, LossBar } from './loss-bar'
import { useDecide } from './use-decide'

const TOLERANCES = ['1', '2', '3', '5'] as const
type Tolerance = (typeof TOLERANCES)[number]

/** Which sensor is enough: the same takes as other parts would have read them. */
export function SensorScreen() {
  const { sensor, decideSensor } = useDecide()
  const job = sensor.value
  const shown = job.state === 'done' ? String(Math.round(job.value.tolerance * 100)) : '2'
  const [chosen, setChosen] = useState<Tolerance | null>(null)
  const tolerance = chosen ?? TOLERANCES.find((one) => one === shown) ?? '2'
  return (
    <DecideScreen
      title={DECIDE_SCREENS.sensor.title}
      job={job}
      about={SENSOR_ABOUT}
      action={DECIDE_SCREENS.sensor.action}
      run={() => void decideSensor(Number(tolerance) / 100)}
      changed={job.state === 'done' && tolerance !== shown}
      settings={
        <Choice
          legend={DECIDE_SCREENS.sensor.tolerance}
          value={tolerance}
          options={TOLERANCES.map((value) => ({ value, text: value }))}
          onChange={setChosen}
        />
      }
    >
      {(decision) => <Found decision={decision} />}
    </DecideScreen>
  )
}

function Found({ decision }: { decision: SensorDecision }) {
  const { limits, own, together } = decision
  return (
    <>
      <p class="decide-sentence">{sensorSentence(decision)}</p>
      <p>{gyroSentence(decision)}</p>
      <Section title={DECIDE_SCREENS.sensor.limits}>
        <ul class="notes">
          {limitSentences(limits, decision).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </Section>
      <Section title={DECIDE_SCREENS.sensor.own}>
        <Setting result={own} decision={decision} />
      </Section>
      {SWEEP_AXES.map((axis) => (
        <Axis key={axis} axis={axis} decision={decision} />
      ))}
      {together.length > 0 && (
        <Section title={DECIDE_SCREENS.sensor.together}>
          <LossAxis />
          {together.map((result) => (
            <Setting key={changeWords(result)} result={result} decision={decision} />
          ))}
        </Section>
      )}
      <p class="quiet small">{sensorBasis(decision)}</p>
    </>
  )
}

function Axis({ axis, decision }: { axis: SweepAxis; decision: SensorDecision }) {
  const results = decision.results.filter((result) => result.axis === axis)
  if (results.length === 0) return null
  return (
    <Section title={SWEEP_TITLES[axis]}>
      <LossAxis />
      {results.map((result) => (
        <Setting key={changeWords(result)} result={result} decision={decision} />
      ))}
    </Section>
  )
}

function Setting({ result, decision }: { result: SettingResult; decision: SensorDecision }) {
  const isOwn = result.axis === 'own'
  return (
    <div class="decide-setting">
      {!isOwn && (
        <header>
          <h3>{changeWords(result)}</h3>
          <span class="decide-verdict">{VERDICT_WORDS[result.verdict]}</span>
        </header>
      )}
      {!isOwn && <LossBar result={result} tolerance={decision.tolerance} />}
      <p class="small">{settingLine(result, decision)}</p>
      <p class="quiet small">{costLine(result)}</p>
    </div>
  )
}
