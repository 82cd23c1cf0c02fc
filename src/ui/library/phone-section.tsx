import { LIBRARY } from '../../shared/words/en/library'
import { offlineSentence } from '../../shared/words/en/offline-words'
import { prefer, preferences, type Theme } from '../../state/preferences'
import { Button, Choice, Section, useApp } from '../common'

const THEMES: { value: Theme; text: string }[] = [
  { value: 'auto', text: LIBRARY.asThePhone },
  { value: 'night', text: LIBRARY.night },
  { value: 'day', text: LIBRARY.day },
]

/** Choices of this phone, which are no part of a library. */
export function PhoneSection() {
  const { update } = useApp()
  const { theme, sound } = preferences.value
  return (
    <Section title={LIBRARY.thisPhone}>
      <Choice
        legend={LIBRARY.screen}
        value={theme}
        options={THEMES}
        onChange={(value) => prefer({ theme: value })}
      />
      <Choice
        legend={LIBRARY.sound}
        value={sound ? 'on' : 'off'}
        options={[
          { value: 'on', text: LIBRARY.on },
          { value: 'off', text: LIBRARY.off },
        ]}
        onChange={(value) => prefer({ sound: value === 'on' })}
      />
      <p class="quiet">{offlineSentence(update.offline.value)}</p>
      <SensorFacts />
      <Button href="#/licences">{LIBRARY.toLicences}</Button>
    </Section>
  )
}

const SIGN_WORDS = {
  1: LIBRARY.signStandard,
  '-1': LIBRARY.signOpposite,
  0: LIBRARY.signUnknown,
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
          {LIBRARY.sensorFacts(simulated, rateHz, hasGyro, accelStepMps2, gyroStepDps)}
        </p>
      )}
      {accelSign !== 0 && !simulated && (
        <Button
          onClick={() => {
            motion.source().setAccelSign(0)
            prefer({ accelSign: 0 })
          }}
        >
          {LIBRARY.findSignAgain}
        </Button>
      )}
    </div>
  )
}
