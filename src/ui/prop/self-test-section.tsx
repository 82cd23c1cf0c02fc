import { useId, useState } from 'preact/hooks'
import type { BoardAnswer, Difference } from '../../shared/firmware/board-answer'
import { PROP } from '../../shared/words/en/prop'
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
    <Section title={PROP.selfTestTitle}>
      <p>{PROP.selfTestLead}</p>
      <div class="field">
        <label for={id}>{PROP.serialText}</label>
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
        {outcome.state === 'comparing' ? PROP.comparing : PROP.compareWithPhone}
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
      {answer.kind === 'other-model' && (
        <p class="quiet">{PROP.boardHash(answer.found.slice(0, 16))}</p>
      )}
      {answer.kind === 'differs' && answer.difference && <First difference={answer.difference} />}
      {answer.kind === 'part' && answer.missing.length > 0 && (
        <p class="quiet">{PROP.notRun(answer.missing)}</p>
      )}
    </Notice>
  )
}

function First({ difference }: { difference: Difference }) {
  const { vector, why, line, expected, found, cause } = difference
  return (
    <>
      <p>{PROP.mismatch(vector, line, why)}</p>
      <dl class="self-test-lines">
        <dt>{PROP.phone}</dt>
        <dd>
          <code>{expected || PROP.nothing}</code>
        </dd>
        <dt>{PROP.board}</dt>
        <dd>
          <code>{found || PROP.nothing}</code>
        </dd>
      </dl>
      <p>{cause}</p>
    </>
  )
}
