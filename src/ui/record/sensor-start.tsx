import { useState } from 'preact/hooks'
import { motionWords } from '../../state/motion-words'
import { Button, Notice, useApp } from '../common'
import { wakeSound } from './cues'

/** Starts the motion sensor from a tap, and says in words when it does not come. */
export function SensorStart() {
  const { motion } = useApp()
  const [asked, setAsked] = useState(false)
  const status = motion.status.value
  const words = motionWords(status)
  const start = (kind: 'phone' | 'simulated') => {
    wakeSound()
    setAsked(true)
    motion.use(kind)
    void motion.start()
  }
  const starting = status === 'starting'
  return (
    <div class="sensor-start">
      {words === null ? (
        <p>
          The phone is the prop: hold it as the prop will be held. Its motion sensors start with a
          tap, and the browser may ask for permission.
        </p>
      ) : (
        <Notice tone="trouble" live={asked}>
          <p>
            <strong>{words.seen}</strong> {words.todo}
          </p>
        </Notice>
      )}
      <Button
        tone={status === 'no-sensor' ? 'plain' : 'amber'}
        big
        wide
        disabled={starting || status === 'insecure'}
        onClick={() => start('phone')}
      >
        {starting ? 'Starting …' : words === null ? 'Start the sensor' : 'Try the sensor again'}
      </Button>
      <Button
        tone={status === 'no-sensor' ? 'amber' : 'plain'}
        big
        wide
        onClick={() => start('simulated')}
      >
        Use the simulated phone
      </Button>
      <p class="quiet small">
        The simulated phone is for a desk: it moves by a model, and its takes are marked.
      </p>
    </div>
  )
}
