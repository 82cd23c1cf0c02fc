import { useState } from 'preact/hooks'
import type { Gesture } from '../../shared/model/library'
import { preferences } from '../../state/preferences'
import { Button, Notice, useApp } from '../common'
import { wakeSound } from './cues'

/** Starts and stops the cutting of movements without a button. */
export function HandsFreeButton({ gesture }: { gesture: Gesture }) {
  const { record } = useApp()
  const [wrong, setWrong] = useState<string | null>(null)
  const running = record.phase.value === 'hands-free'
  const { keepGood } = preferences.value
  const becomes = keepGood ? 'kept when it looks good' : 'offered to you'
  const begin = async () => {
    wakeSound()
    const begun = await record.beginHandsFree(gesture.id, keepGood)
    setWrong(begun.ok ? null : begun.message)
  }
  return (
    <div class="foot-stack">
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
      <p class="quiet">
        {running
          ? `Listening, ${Math.floor(record.elapsedMs.value / 1000)} s. Rest, move, rest: each movement is ${becomes}.`
          : `Rest before and after each movement; it is cut out and ${becomes}.`}
      </p>
      {running ? (
        <Button big wide onClick={() => void record.stop()}>
          Stop
        </Button>
      ) : (
        <Button
          tone="amber"
          big
          wide
          disabled={record.phase.value === 'saving'}
          onClick={() => void begin()}
        >
          Listen for {gesture.name}
        </Button>
      )}
    </div>
  )
}
