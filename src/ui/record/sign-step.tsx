import './record.css'
import { signal } from '@preact/signals'
import { useState } from 'preact/hooks'
import { RECORD } from '../../shared/words/en/record'
import { Button, Notice, useApp } from '../common'

/** Put off for this visit; the step stays in reach in the library's settings. */
const putOff = signal(false)

/** The lay-flat step: which way this phone counts gravity. Shown once while it is not known. */
export function SignStep() {
  const { motion } = useApp()
  const [state, setState] = useState<'asking' | 'measuring'>('asking')
  const [wrong, setWrong] = useState<string | null>(null)
  const facts = motion.facts.value
  if (facts.simulated || facts.accelSign !== 0 || putOff.value) return null
  const measure = async () => {
    setState('measuring')
    const found = await motion.findSign()
    setState('asking')
    setWrong(found.ok ? null : found.message)
  }
  return (
    <Notice>
      <p>{RECORD.signLead}</p>
      {wrong !== null && <p role="alert">{wrong}</p>}
      <div class="buttons">
        <Button disabled={state === 'measuring'} onClick={() => void measure()}>
          {state === 'measuring' ? RECORD.holdStill : RECORD.itLiesFlat}
        </Button>
        <Button
          tone="quiet"
          onClick={() => {
            putOff.value = true
          }}
        >
          {RECORD.later}
        </Button>
      </div>
    </Notice>
  )
}
