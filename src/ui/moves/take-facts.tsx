import { useState } from 'preact/hooks'
import type { Hand, Take } from '../../shared/model/library'
import { GESTURE } from '../../shared/words/en/gesture'
import { Button, SelectField, TextField, useApp } from '../common'

const HANDS: { value: Hand; text: string }[] = [
  { value: 'left', text: GESTURE.left },
  { value: 'right', text: GESTURE.right },
  { value: 'unknown', text: GESTURE.notNoted },
]

/** Puts right who performed a take: a wrong tester would spoil every held-out figure. */
export function TakeFacts({ take }: { take: Take }) {
  const { library } = useApp()
  const [code, setCode] = useState(take.testerCode)
  const changed = code !== take.testerCode
  return (
    <form
      class="take-facts"
      onSubmit={(event) => {
        event.preventDefault()
        if (changed && code !== '') void library.updateFacts(take.id, { testerCode: code })
      }}
    >
      <TextField
        label={GESTURE.testerCode}
        value={code}
        maxLength={8}
        onInput={(value) => setCode(value.trim())}
      />
      <SelectField
        label={GESTURE.hand}
        value={take.hand}
        options={HANDS}
        onChange={(hand) => void library.updateFacts(take.id, { hand })}
      />
      {changed && (
        <Button submit disabled={code === ''}>
          {GESTURE.changeTester}
        </Button>
      )}
    </form>
  )
}
