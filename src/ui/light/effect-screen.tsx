import { useMemo, useState } from 'preact/hooks'
import { checkEffect } from '../../shared/light/check-effect'
import { withAnswer } from '../../shared/light/edit'
import { answersInOrder, lightOf, lightTable } from '../../shared/light/library-light'
import { runLengthMs } from '../../shared/light/run'
import { SOUND_PRESETS, VIBRATION_PRESETS } from '../../shared/light/steps'
import type { Library } from '../../shared/model/library'
import type { Answer } from '../../shared/model/light'
import { LIGHT_EFFECT } from '../../shared/words/en/light-effect'
import { drainSentence } from '../../shared/words/en/light-words'
import { durationText } from '../../shared/words/en/numbers'
import { Button, Notice, route, Screen, Section, SelectField, useApp } from '../common'
import { Missing } from '../moves/missing'
import { EffectFields } from './effect-fields'
import { CAN_VIBRATE, playTune, playVibration } from './play-steps'
import { SafetyList } from './safety-list'
import { StepsField } from './steps-field'
import { Strip } from './strip'
import { usePlayer, useRun } from './use-player'
import { useAnswerSafety } from './use-safety'
import { WayOnFields } from './way-on-fields'

/** Shown at most: longer effects would be a blur. */
const STRIP_MS = 12_000
const CALM_CHANGE_MS = 600

/** How the prop answers one gesture, at rest, or to a rejected movement. */
export function EffectScreen({ library, answerKey }: { library: Library; answerKey: string }) {
  const entry = answersInOrder(library).find(({ key }) => key === answerKey)
  if (entry === undefined) return <Missing what="gesture" />
  return (
    <OneEffect library={library} answerKey={answerKey} name={entry.name} stored={entry.answer} />
  )
}

interface OneEffectProps {
  library: Library
  answerKey: string
  name: string
  stored: Answer
}

function OneEffect({ library, answerKey, name, stored }: OneEffectProps) {
  const [answer, problem, change] = useAnswer(answerKey, stored)
  const isRest = answerKey === 'idle' || answerKey === 'low'
  const sound = checkEffect(answer.light).ok ? answer : stored
  const shown = useMemo(() => withAnswer(library, answerKey, sound), [library, answerKey, sound])
  const drain = drainSentence(lightOf(library))
  return (
    <Screen
      title={name}
      back={route('light')}
      foot={
        <Button tone="amber" big wide href={route('light', answerKey, 'preview')}>
          {LIGHT_EFFECT.seeIt}
        </Button>
      }
    >
      <EffectPicture library={shown} answerKey={answerKey} />
      <Section title={LIGHT_EFFECT.light}>
        <EffectFields effect={answer.light} onChange={(light) => change({ ...answer, light })} />
        {problem !== null && (
          <Notice tone="trouble" live>
            <p>{LIGHT_EFFECT.stillInUse(problem)}</p>
          </Notice>
        )}
        {drain !== null && <p class="small quiet">{drain}</p>}
      </Section>
      <Safety library={shown} answerKey={answerKey} answer={sound} onChange={change} />
      <Section title={LIGHT_EFFECT.beforeAndAfter}>
        <WayOnFields
          effect={answer.light}
          gestures={library.gestures.filter(({ id }) => id !== answerKey)}
          isRest={isRest}
          onChange={(light) => change({ ...answer, light })}
        />
        <CopyFrom library={library} answerKey={answerKey} onChange={change} />
      </Section>
      {!isRest && <SoundSection answer={answer} onChange={change} />}
    </Screen>
  )
}

/** The answer as it is being edited; a sound one is stored at once, a wrong one stays on screen. */
function useAnswer(key: string, stored: Answer): [Answer, string | null, (answer: Answer) => void] {
  const app = useApp()
  const [draft, setDraft] = useState<Answer | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const change = (next: Answer) => {
    setDraft(next)
    void app.light.setAnswer(key, next).then((kept) => {
      setProblem(kept.ok ? null : kept.message)
      if (kept.ok) setDraft((now) => (now === next ? null : now))
    })
  }
  return [draft ?? stored, problem, change]
}

function EffectPicture(props: { library: ReturnType<typeof withAnswer>; answerKey: string }) {
  const { library, answerKey } = props
  const player = usePlayer()
  const number = answersInOrder(library).findIndex(({ key }) => key === answerKey)
  const lengthMs = Math.min(STRIP_MS, runLengthMs(lightTable(library), number))
  const run = useRun(player, library, answerKey, lengthMs)
  return (
    <figure>
      <Strip run={run} label={LIGHT_EFFECT.lightOver(lengthMs)} />
      <figcaption class="strip-ends small quiet">
        <span>{LIGHT_EFFECT.start}</span>
        <span>{durationText(lengthMs)}</span>
      </figcaption>
    </figure>
  )
}

interface ChangeProps {
  answer: Answer
  onChange: (answer: Answer) => void
}

function Safety(
  props: ChangeProps & { library: ReturnType<typeof withAnswer>; answerKey: string },
) {
  const { library, answerKey, answer, onChange } = props
  const app = useApp()
  const player = usePlayer()
  const findings = useAnswerSafety(player, library, answerKey)
  const isHasty = lightOf(library).minChangeMs < CALM_CHANGE_MS
  return (
    <Section title={LIGHT_EFFECT.flashes}>
      <SafetyList
        findings={findings}
        player={player}
        library={library}
        answerKey={answerKey}
        answer={answer}
        onMend={(light) => onChange({ ...answer, light })}
        onSpace={isHasty ? () => void app.light.update({ minChangeMs: CALM_CHANGE_MS }) : null}
      />
    </Section>
  )
}

function CopyFrom(props: {
  library: Library
  answerKey: string
  onChange: (answer: Answer) => void
}) {
  const others = answersInOrder(props.library).filter(({ key }) => key !== props.answerKey)
  return (
    <SelectField
      label={LIGHT_EFFECT.copyFrom}
      value=""
      options={[
        { value: '', text: LIGHT_EFFECT.choose },
        ...others.map(({ key, name }) => ({ value: key, text: name })),
      ]}
      onChange={(key) => {
        const found = others.find((other) => other.key === key)
        if (found !== undefined) props.onChange(structuredClone(found.answer))
      }}
    />
  )
}

function SoundSection({ answer, onChange }: ChangeProps) {
  return (
    <Section title={LIGHT_EFFECT.sound.title}>
      <StepsField
        label={LIGHT_EFFECT.sound.tune}
        hint={LIGHT_EFFECT.sound.tuneHint}
        most={20_000}
        steps={answer.sound}
        presets={SOUND_PRESETS}
        onChange={(sound) => onChange({ ...answer, sound })}
        onPlay={playTune}
      />
      <StepsField
        label={LIGHT_EFFECT.sound.vibration}
        hint={LIGHT_EFFECT.sound.vibrationHint(CAN_VIBRATE)}
        most={255}
        steps={answer.vibration}
        presets={VIBRATION_PRESETS}
        onChange={(vibration) => onChange({ ...answer, vibration })}
        onPlay={CAN_VIBRATE ? playVibration : null}
      />
    </Section>
  )
}
