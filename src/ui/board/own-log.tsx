import { useState } from 'preact/hooks'
import type { LineComparison } from '../../shared/board/decision/event-log'
import type { Result } from '../../shared/model/result'
import { Button, Notice, Section } from '../common'
import { useBoard } from './use-board'

/** An event log that the device printed over the very samples it logged. */
export function OwnLog() {
  const { beside } = useBoard()
  const [text, setText] = useState('')
  const [compared, setCompared] = useState<Result<LineComparison> | null>(null)
  return (
    <Section title="The device’s own event log">
      <label class="field board-paste">
        <span>Lines that begin with “event”, of the log above</span>
        <textarea
          rows={4}
          value={text}
          spellcheck={false}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <Button disabled={text === ''} onClick={() => void beside.compareLog(text).then(setCompared)}>
        Compare to the bit
      </Button>
      {compared !== null && !compared.ok && <Notice tone="trouble">{compared.message}</Notice>}
      {compared?.ok && compared.value.same && (
        <Notice live>All {compared.value.total} events are the same, word for word.</Notice>
      )}
      {compared?.ok && compared.value.first !== null && (
        <Notice tone="trouble" live>
          <p>
            {compared.value.agreeing} of {compared.value.total} events agree before the first that
            does not:
          </p>
          <pre class="board-tail">
            {`here   ${compared.value.first.expected ?? '(none)'}\ndevice ${compared.value.first.found ?? '(none)'}`}
          </pre>
          <p>{compared.value.first.cause}</p>
        </Notice>
      )}
    </Section>
  )
}
