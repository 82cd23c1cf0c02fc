import { useState } from 'preact/hooks'
import type { Hand } from '../../shared/model/library'
import { RECORD } from '../../shared/words/en/record'
import { Button, Choice, TextField, useApp } from '../common'
import { startNewTester } from './new-tester'

const HANDS = [
  { value: 'left', text: RECORD.left },
  { value: 'right', text: RECORD.right },
  { value: 'unknown', text: RECORD.notNoted },
] as const

const HOLDS: Record<Hand, string> = {
  left: RECORD.leftHand,
  right: RECORD.rightHand,
  unknown: RECORD.handNotNoted,
}

/** Whose takes these are, by a code and never by a name. */
export function TesterStrip({ locked }: { locked: boolean }) {
  const app = useApp()
  const { testerCode, hand, setTester } = app.record
  const [open, setOpen] = useState(false)
  const code = testerCode.value
  const holds = HOLDS[hand.value]
  if (!open || locked) {
    return (
      <div class="tester-strip">
        <p>
          {RECORD.tester} <strong>{code}</strong>, {holds}
        </p>
        {!locked && (
          <Button tone="quiet" onClick={() => setOpen(true)}>
            {RECORD.change}
          </Button>
        )}
      </div>
    )
  }
  return (
    <div class="tester-open">
      <div class="tester-code">
        <TextField
          label={RECORD.testerCode}
          value={code}
          maxLength={8}
          onInput={(value) => setTester(value.trim(), hand.value)}
          hint={RECORD.codeHint}
        />
        <Button onClick={() => startNewTester(app)}>{RECORD.newTester}</Button>
      </div>
      <Choice
        legend={RECORD.handLabel}
        value={hand.value}
        options={[...HANDS]}
        onChange={(value) => setTester(code, value)}
      />
      <Button disabled={code === ''} onClick={() => setOpen(false)}>
        {RECORD.done}
      </Button>
    </div>
  )
}
