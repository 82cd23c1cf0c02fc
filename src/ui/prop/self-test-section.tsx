import { useId, useState } from 'preact/hooks'
import type { BoardAnswer, Difference } from '../../shared/firmware/board-answer'
import { Button, Notice, Section, useApp } from '../common'

type Outcome =
  | { state: 'none' | 'comparing' }
  | { state: 'failed'; message: string }
  | { state: 'compared'; answer: BoardAnswer }

/** The self-test of a board: its log goes in as text, the verdict comes out. */
export function SelfTestSection() {
  const app = useApp()
  const id = useId()
  const [text, setText] = useState('')
  const [outcome, setOutcome] = useState<Outcome>({ state: 'none' })
  const compare = async () => {
    setOutcome({ state: 'comparing' })
    const compared = await app.compareBoard(text)
    setOutcome(
      compared.ok
        ? { state: 'compared', answer: compared.value }
        : { state: 'failed', message: compared.message },
    )
  }
  return (
    <Section title="Board's answer">
      <p>
        Does the board compute what this phone does? Run the self-test of the exported firmware
        (INTEGRATION.md in it) and paste what it prints, from “movewright 1” to “done”.
      </p>
      <div class="field">
        <label for={id}>Text from the serial port</label>
        <textarea
          id={id}
          class="matrix-field"
          rows={4}
          value={text}
          spellcheck={false}
          autocomplete="off"
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </div>
      <Button
        wide
        disabled={outcome.state === 'comparing' || text.trim() === ''}
        onClick={() => void compare()}
      >
        {outcome.state === 'comparing' ? 'Comparing …' : 'Compare with the phone'}
      </Button>
      {outcome.state === 'failed' && (
        <Notice tone="trouble" live>
          <p>{outcome.message}</p>
        </Notice>
      )}
      {outcome.state === 'compared' && <Verdict answer={outcome.answer} />}
    </Section>
  )
}

/** What came of the comparison. */
export function Verdict({ answer }: { answer: BoardAnswer }) {
  if (answer.kind === 'agrees') return <p role="status">{answer.message}</p>
  const trouble = answer.kind !== 'part'
  return (
    <Notice {...(trouble ? { tone: 'trouble' as const } : {})} live>
      <p>{answer.message}</p>
      {answer.kind === 'other-model' && <p class="quiet">Its hash: {answer.found.slice(0, 16)}</p>}
      {answer.kind === 'differs' && answer.difference && <First difference={answer.difference} />}
      {answer.kind === 'part' && answer.missing.length > 0 && (
        <p class="quiet">Not run: {answer.missing.join(', ')}</p>
      )}
    </Notice>
  )
}

function First({ difference }: { difference: Difference }) {
  const { vector, why, line, expected, found, cause } = difference
  return (
    <>
      <p>
        {vector}, line {line}: {why}
      </p>
      <dl class="self-test-lines">
        <dt>Phone</dt>
        <dd>
          <code>{expected || '(nothing)'}</code>
        </dd>
        <dt>Board</dt>
        <dd>
          <code>{found || '(nothing)'}</code>
        </dd>
      </dl>
      <p>{cause}</p>
    </>
  )
}
