import { useEffect, useState } from 'preact/hooks'
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
      title="Lay the phone on a table"
      foot={
        <Button big wide onClick={onSkip}>
          There is no table here
        </Button>
      }
    >
      <p class="join-lead" role="status">
        Screen up, and take your hand off for a second. It goes on by itself.
      </p>
      <p class="quiet" role="status">
        {hint}
      </p>
    </Screen>
  )
}
