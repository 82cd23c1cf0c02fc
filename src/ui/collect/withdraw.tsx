import { useState } from 'preact/hooks'
import type { CollectState } from '../../state/collect'
import { Button, Section, SelectField } from '../common'

/** Takes a tester out who no longer agrees. */
export function Withdraw({ collect, testers }: { collect: CollectState; testers: string[] }) {
  const [chosen, setChosen] = useState('')
  return (
    <Section title="A tester withdraws">
      <p class="quiet">
        Every recording and session of the tester goes from this library, and no file brings them
        back; libraries that this one is brought into lose them too. It can be undone in this visit;
        a day later nothing is left to undo.
      </p>
      <SelectField
        label="Tester's code"
        value={chosen}
        options={[
          { value: '', text: 'Choose a code' },
          ...testers.map((code) => ({ value: code, text: code })),
        ]}
        onChange={setChosen}
      />
      {chosen !== '' && (
        <Button
          onClick={() => {
            void collect.withdraw(chosen)
            setChosen('')
          }}
        >
          Withdraw {chosen}
        </Button>
      )}
    </Section>
  )
}
