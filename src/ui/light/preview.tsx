import { useMemo, useState } from 'preact/hooks'
import { answersInOrder, lightOf } from '../../shared/light/library-light'
import { safePace } from '../../shared/light/pace'
import type { LightPlayer } from '../../shared/light/player'
import { checkAnswer } from '../../shared/light/safety'
import type { Library } from '../../shared/model/library'
import { LIGHT_ANSWERS } from '../../shared/words/en/light-answers'
import { LIGHT_SAFETY } from '../../shared/words/en/light-safety'
import { drainSentence } from '../../shared/words/en/light-words'
import { preferences } from '../../state/preferences'
import { Button, goBack, route, useApp, useWakeLock } from '../common'
import { Missing } from '../moves/missing'
import { AirPicture } from './air-picture'
import { FlashWarning } from './flash-warning'
import { playTune, playVibration } from './play-steps'
import { useLamp } from './use-lamp'
import { usePlayer } from './use-player'

/** The whole screen as the light, after the warning, once a visit. */
export function Preview({ library, answerKey }: { library: Library; answerKey: string }) {
  const app = useApp()
  if (!answersInOrder(library).some(({ key }) => key === answerKey)) {
    return <Missing what="gesture" />
  }
  if (!app.light.warned.value) {
    return (
      <FlashWarning
        limit={LIGHT_ANSWERS.lamp.shownSlower}
        action={LIGHT_ANSWERS.lamp.show}
        onAccept={app.light.acceptWarning}
        onBack={() => close(answerKey)}
      />
    )
  }
  return <Lamp library={library} answerKey={answerKey} />
}

function close(answerKey: string): void {
  goBack(route('light', answerKey))
}

function Lamp({ library, answerKey }: { library: Library; answerKey: string }) {
  useWakeLock(true)
  const player = usePlayer()
  const pace = usePace(player, library, answerKey)
  return player === null || pace === null ? (
    <div class="lamp" />
  ) : (
    <Shining player={player} pace={pace} library={library} answerKey={answerKey} />
  )
}

/** Looked at before anything is shown. */
function usePace(player: LightPlayer | null, library: Library, key: string): number | null {
  return useMemo(
    () => (player === null ? null : safePace(checkAnswer(player, library, key))),
    [player, library, key],
  )
}

function Shining(props: {
  player: LightPlayer
  pace: number
  library: Library
  answerKey: string
}) {
  const { player, pace, library, answerKey } = props
  const [words, setWords] = useState(true)
  const [surface, begin] = useLamp(player, library, answerKey, pace)
  const { led } = lightOf(library)
  const answer = answersInOrder(library).find(({ key }) => key === answerKey)?.answer
  const again = () => {
    begin()
    if (answer === undefined) return
    if (preferences.peek().sound) playTune(answer.sound)
    playVibration(answer.vibration)
  }
  const drain = drainSentence(lightOf(library))
  const slowed = LIGHT_ANSWERS.lamp.slowed(pace)
  return (
    <div class="lamp">
      <div class="lamp-light" ref={surface} aria-hidden="true" />
      {words && (
        <div class="lamp-words">
          {pace < 1 && (
            <p>
              <strong>{slowed.strong}</strong> {slowed.after}
            </p>
          )}
          <AirPicture library={library} answerKey={answerKey} />
          <p class="small">
            {LIGHT_ANSWERS.lamp.pwm(led.pwmHz, led.pwmBits)} {drain ?? ''}
          </p>
          <p class="small">{LIGHT_SAFETY.screenCaveat}</p>
        </div>
      )}
      <div class="lamp-foot buttons">
        <Button onClick={again}>{LIGHT_ANSWERS.lamp.again}</Button>
        <Button pressed={words} onClick={() => setWords(!words)}>
          {LIGHT_ANSWERS.lamp.words}
        </Button>
        <Button onClick={() => close(answerKey)}>{LIGHT_ANSWERS.lamp.close}</Button>
      </div>
    </div>
  )
}
