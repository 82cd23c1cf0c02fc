import './record.css'
import type { MotionStatus } from '../../sensors/motion-source'
import { RECORD } from '../../shared/words/en/record'
import { motionWords } from '../../state/motion-words'
import { Button, Notice, useApp } from '../common'
import { wakeSound } from './cues'

/** What starting the sensor means, or why no readings came. */
export function SensorWords() {
  const { motion } = useApp()
  const words = motionWords(motion.status.value)
  if (words === null) {
    return <p>{RECORD.sensorLead}</p>
  }
  return (
    <Notice tone="trouble" live>
      <p>
        <strong>{words.seen}</strong> {words.todo}
      </p>
    </Notice>
  )
}

const PHONE_TEXTS: Record<MotionStatus, string> = {
  stopped: RECORD.startSensor,
  starting: RECORD.starting,
  running: RECORD.startSensor,
  denied: RECORD.trySensorAgain,
  insecure: RECORD.startSensor,
  'no-sensor': RECORD.trySensorAgain,
  lost: RECORD.startSensorAgain,
}

/** Starts the motion sensor from a tap, or the simulated phone. */
export function SensorButtons() {
  const { motion, record } = useApp()
  const status = motion.status.value
  const start = (kind: 'phone' | 'simulated') => {
    wakeSound()
    motion.use(kind)
    void motion.start()
  }
  // Where no sensor can come, the simulated phone is the thing to do.
  const hopeless = status === 'no-sensor' || status === 'insecure'
  const phone = (
    <Button
      tone={hopeless ? 'plain' : 'amber'}
      big
      wide
      disabled={status === 'starting' || status === 'insecure'}
      onClick={() => start('phone')}
    >
      {PHONE_TEXTS[status]}
    </Button>
  )
  // A recording under way goes on with the source it began with.
  if (record.phase.value !== 'idle') return phone
  return (
    <div class="foot-stack">
      <Button tone={hopeless ? 'amber' : 'plain'} big wide onClick={() => start('simulated')}>
        {RECORD.useSimulated}
      </Button>
      {phone}
      <p class="quiet small">{RECORD.simulatedHint}</p>
    </div>
  )
}
