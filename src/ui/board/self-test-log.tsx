import { useState } from 'preact/hooks'
import type { BoardAnswer } from '../../shared/firmware/board-answer'
import type { Result } from '../../shared/model/result'
import { Button, Notice, Section } from '../common'
import { useBoard } from './use-board'

/** The exported self-test, run on the device: the same vectors, the same answers to the bit. */
export function SelfTestLog() {
  const { beside } = useBoard()
  const [text, setText] = useState('')
  const [busy, setBusy] = useState(false)
  const [answer, setAnswer] = useState<Result<BoardAnswer> | null>(null)
  const compare = async () => {
    setBusy(true)
    setAnswer(await beside.compareSelfTest(text))
    setBusy(false)
  }
  return (
    <Section title="The self-test on the device">
      <label class="field board-paste">
        <span>From “movewright 1” to “done”</span>
        <textarea
          rows={4}
          value={text}
          spellcheck={false}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <Button disabled={text === '' || busy} onClick={() => void compare()}>
        {busy ? 'Comparing…' : 'Compare the self-test'}
      </Button>
      {answer !== null && !answer.ok && <Notice tone="trouble">{answer.message}</Notice>}
      {answer?.ok && <Answer answer={answer.value} />}
    </Section>
  )
}

function Answer({ answer }: { answer: BoardAnswer }) {
  const fine = answer.kind === 'agrees' || answer.kind === 'part'
  const difference = 'difference' in answer ? answer.difference : null
  return (
    <Notice tone={fine ? 'plain' : 'trouble'} live>
      <p>{answer.message}</p>
      {difference !== null && (
        <>
          <p>
            {difference.vector}, line {difference.line}: {difference.why}
          </p>
          <pre class="board-tail">
            {`here   ${difference.expected || '(none)'}\ndevice ${difference.found || '(none)'}`}
          </pre>
          <p>{difference.cause}</p>
        </>
      )}
    </Notice>
  )
}
