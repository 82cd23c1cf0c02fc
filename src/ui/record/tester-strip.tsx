import { useState } from 'preact/hooks'
import { Button, Choice, TextField, useApp } from '../common'
import { startNewTester } from './new-tester'

const HANDS = [
  { value: 'left', text: 'Left' },
  { value: 'right', text: 'Right' },
  { value: 'unknown', text: 'Not noted' },
] as const

/** Whose takes these are, by a code and never by a name. */
export function TesterStrip({ locked }: { locked: boolean }) {
  const app = useApp()
  const { testerCode, hand, setTester } = app.record
  const [open, setOpen] = useState(false)
  const code = testerCode.value
  const holds = hand.value === 'unknown' ? 'hand not noted' : `${hand.value} hand`
  if (!open || locked) {
    return (
      <div class="tester-strip">
        <p>
          Tester <strong>{code}</strong>, {holds}
        </p>
        {!locked && (
          <Button tone="quiet" onClick={() => setOpen(true)}>
            Change
          </Button>
        )}
      </div>
    )
  }
  return (
    <div class="tester-open">
      <div class="tester-code">
        <TextField
          label="Tester's code"
          value={code}
          maxLength={8}
          onInput={(value) => setTester(value.trim(), hand.value)}
          hint="A code such as T01; no names."
        />
        <Button onClick={() => startNewTester(app)}>New tester</Button>
      </div>
      <Choice
        legend="Hand that holds the prop"
        value={hand.value}
        options={[...HANDS]}
        onChange={(value) => setTester(code, value)}
      />
      <Button disabled={code === ''} onClick={() => setOpen(false)}>
        Done
      </Button>
    </div>
  )
}
