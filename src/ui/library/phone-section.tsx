import { shortNumber } from '../../shared/words/en/numbers'
import { offlineSentence } from '../../shared/words/en/offline-words'
import { prefer, preferences, type Theme } from '../../state/preferences'
import { Button, Choice, Section, useApp } from '../common'

const THEMES: { value: Theme; text: string }[] = [
  { value: 'auto', text: 'As the phone' },
  { value: 'night', text: 'Night' },
  { value: 'day', text: 'Day' },
]

/** Choices of this phone, which are no part of a library. */
export function PhoneSection() {
  const { update } = useApp()
  const { theme, sound } = preferences.value
  return (
    <Section title="This phone">
      <Choice
        legend="Screen"
        value={theme}
        options={THEMES}
        onChange={(value) => prefer({ theme: value })}
      />
      <Choice
        legend="Sound at start, stop and cut of a recording"
        value={sound ? 'on' : 'off'}
        options={[
          { value: 'on', text: 'On' },
          { value: 'off', text: 'Off' },
        ]}
        onChange={(value) => prefer({ sound: value === 'on' })}
      />
      <p class="quiet">{offlineSentence(update.offline.value)}</p>
      <SensorFacts />
      <Button href="#/licences">Licences: what the app is made of</Button>
    </Section>
  )
}

const SIGN_WORDS = {
  1: 'Flat with the screen up reads +9.8 m/s², as the standard says.',
  '-1': 'Flat with the screen up reads −9.8 m/s²; the app turns it round.',
  0: 'The sign of gravity is not found out yet; recording asks for it.',
} as const

function SensorFacts() {
  const { motion } = useApp()
  const { rateHz, hasGyro, accelStepMps2, gyroStepDps, simulated } = motion.facts.value
  const { accelSign } = preferences.value
  return (
    <div class="sensor-facts">
      <p class="quiet">{SIGN_WORDS[accelSign]}</p>
      {rateHz > 0 && (
        <p class="quiet">
          {simulated ? 'Simulated phone' : 'Sensor'}: {shortNumber(rateHz)} Hz,{' '}
          {hasGyro ? 'with gyroscope' : 'no gyroscope'}, steps of{' '}
          {accelStepMps2 > 0 ? `${shortNumber(accelStepMps2)} m/s²` : 'no visible size'} and{' '}
          {gyroStepDps > 0 ? `${shortNumber(gyroStepDps)} deg/s` : 'no visible size'}.
        </p>
      )}
      {accelSign !== 0 && !simulated && (
        <Button
          onClick={() => {
            motion.source().setAccelSign(0)
            prefer({ accelSign: 0 })
          }}
        >
          Find the sign out again
        </Button>
      )}
    </div>
  )
}
