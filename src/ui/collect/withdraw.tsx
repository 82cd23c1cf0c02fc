import { useState } from 'preact/hooks'
import { COLLECT_TESTERS } from '../../shared/words/en/collect-testers'
import type { CollectState } from '../../state/collect'
import { Button, Section, SelectField } from '../common'

/** Takes a tester out who no longer agrees. */
export function Withdraw({ collect, testers }: { collect: CollectState; testers: string[] }) {
  const [chosen, setChosen] = useState('')
  return (
    <Section title={COLLECT_TESTERS.withdraw.title}>
      <p class="quiet">{COLLECT_TESTERS.withdraw.hint}</p>
      <SelectField
        label={COLLECT_TESTERS.withdraw.code}
        value={chosen}
        options={[
          { value: '', text: COLLECT_TESTERS.withdraw.chooseCode },
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
          {COLLECT_TESTERS.withdraw.withdraw(chosen)}
        </Button>
      )}
    </Section>
  )
}
