import { useEffect, useState } from 'preact/hooks'
import { SESSION_JOIN } from '../../shared/words/en/session-join'
import { Button, Screen, useApp } from '../common'

/** Several failures in a row are worth a word; one is a hand that has just let go. */
const PATIENCE = 2

/** Which way this phone counts gravity: found by itself as soon as it lies flat and still. */
export function FlatStep({ onSkip }: { onSkip: () => void }) {
  const { motion } = useApp()
  const [hint, setHint] = useState('')
  useEffect(() => {
    let wanted = true
    const look = async () => {
      for (let tries = 1; wanted; tries++) {
        const found = await motion.findSign()
        if (found.ok || !wanted) return
        if (tries > PATIENCE) setHint(found.message)
      }
    }
    void look()
    return () => {
      wanted = false
    }
  }, [motion])
  return (
    <Screen
      title={SESSION_JOIN.flat.title}
      foot={
        <Button big wide onClick={onSkip}>
          {SESSION_JOIN.flat.noTable}
        </Button>
      }
    >
      <p class="join-lead" role="status">
        {SESSION_JOIN.flat.screenUp}
      </p>
      <p class="quiet" role="status">
        {hint}
      </p>
    </Screen>
  )
}
