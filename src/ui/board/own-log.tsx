import { useState } from 'preact/hooks'
import type { LineComparison } from '../../shared/board/decision/event-log'
import type { Result } from '../../shared/model/result'
import { BOARD_NEXT } from '../../shared/words/en/board-next'
import { Button, Notice, Section } from '../common'
import { useBoard } from './use-board'

/** An event log that the device printed over the very samples it logged. */
export function OwnLog() {
  const { beside } = useBoard()
  const [text, setText] = useState('')
  const [compared, setCompared] = useState<Result<LineComparison> | null>(null)
  return (
    <Section title={BOARD_NEXT.ownLog.title}>
      <label class="field board-paste">
        <span>{BOARD_NEXT.ownLog.lines}</span>
        <textarea
          rows={4}
          value={text}
          spellcheck={false}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <Button disabled={text === ''} onClick={() => void beside.compareLog(text).then(setCompared)}>
        {BOARD_NEXT.ownLog.compare}
      </Button>
      {compared !== null && !compared.ok && <Notice tone="trouble">{compared.message}</Notice>}
      {compared?.ok && compared.value.same && (
        <Notice live>{BOARD_NEXT.ownLog.allSame(compared.value.total)}</Notice>
      )}
      {compared?.ok && compared.value.first !== null && (
        <Notice tone="trouble" live>
          <p>{BOARD_NEXT.ownLog.differs(compared.value.agreeing, compared.value.total)}</p>
          <pre class="board-tail">
            {BOARD_NEXT.ownLog.difference(
              compared.value.first.expected,
              compared.value.first.found,
            )}
          </pre>
          <p>{compared.value.first.cause}</p>
        </Notice>
      )}
    </Section>
  )
}
