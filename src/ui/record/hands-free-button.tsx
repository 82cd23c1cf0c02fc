import { useState } from 'preact/hooks'
import type { Gesture } from '../../shared/model/library'
import { RECORD } from '../../shared/words/en/record'
import { preferences } from '../../state/preferences'
import { Button, Notice, useApp } from '../common'
import { wakeSound } from './cues'

/** Starts and stops the cutting of movements without a button. */
export function HandsFreeButton({ gesture }: { gesture: Gesture }) {
  const { record } = useApp()
  const [wrong, setWrong] = useState<string | null>(null)
  const running = record.phase.value === 'hands-free'
  const { keepGood } = preferences.value
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
          ? RECORD.listening(Math.floor(record.elapsedMs.value / 1000), keepGood)
          : RECORD.restAround(keepGood)}
      </p>
      {running ? (
        <Button big wide onClick={() => void record.stop()}>
          {RECORD.stop}
        </Button>
      ) : (
        <Button
          tone="amber"
          big
          wide
          disabled={record.phase.value === 'saving'}
          onClick={() => void begin()}
        >
          {RECORD.listenFor(gesture.name)}
        </Button>
      )}
    </div>
  )
}
