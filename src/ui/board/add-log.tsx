import { useState } from 'preact/hooks'
import { MOST_CHECKED } from '../../shared/board/check/bench-log'
import { BENCH_STEPS, benchStep, FREE_STEP, type StepId } from '../../shared/board/check/steps'
import { rowCount } from '../../shared/board/log/board-log'
import { MAX_ROWS, PREVIEW_CHARACTERS, previewLog } from '../../shared/board/log/read-log'
import { groupDigits } from '../../shared/words/en/numbers'
import { Button, FileButton, Notice, Progress, SelectField, useApp } from '../common'
import type { ChosenColumns } from './board-screen'
import { Columns } from './columns'
import { useBoard } from './use-board'

export interface AddLogProps {
  step: StepId
  /** The log can be of nothing else. */
  fixed?: boolean
  /** Chosen for an earlier log of this visit; its columns are taken for the next as well. */
  columns: ChosenColumns | null
  onColumns: (columns: ChosenColumns) => void
  onDone: () => void
}

interface Brought {
  name: string
  blob: Blob
}

/** The way of a log from a file or text to the bench: guess, look, read. */
function useLogReader({ step, columns, onColumns, onDone }: AddLogProps) {
  const board = useBoard()
  const { library } = useApp()
  const [brought, setBrought] = useState<Brought | null>(null)
  const [text, setText] = useState('')
  const [as, setAs] = useState<StepId | null>(null)
  const [said, setSaid] = useState<{ text: string; wrong: boolean } | null>(null)
  const target = library.current.value?.target
  const chosen = as ?? step
  const bring = async (next: Brought) => {
    if (target === undefined) return
    const start = await next.blob.slice(0, PREVIEW_CHARACTERS).text()
    const preview = previewLog(start, target, next.name)
    setSaid(preview.ok ? null : { text: preview.message, wrong: true })
    setBrought(preview.ok ? next : null)
    if (!preview.ok) return
    const { headerRows } = preview.value.mapping
    const same = columns?.preview.columnCount === preview.value.columnCount
    const mapping = same ? { ...columns.mapping, headerRows } : preview.value.mapping
    onColumns({ preview: preview.value, mapping })
  }
  const paste = (pasted: string) => {
    setText(pasted)
    if (pasted !== '') void bring({ name: 'The pasted text', blob: new Blob([pasted]) })
  }
  const read = async () => {
    if (brought === null || columns === null) return
    const done = await board.bench.readFile(chosen, brought.blob, brought.name, columns.mapping)
    const words = done.ok ? whatWasRead(done.value) : done.message
    setSaid({ text: words, wrong: !done.ok })
    if (!done.ok) return
    setBrought(null)
    setText('')
    setAs(null)
    onDone()
  }
  return { brought, text, chosen, said, bring, paste, read, setAs }
}

/** A log of one step from a file or pasted; columns are guessed and shown before it is read. */
export function AddLog(props: AddLogProps) {
  const { bench } = useBoard()
  const { brought, text, chosen, said, bring, paste, read, setAs } = useLogReader(props)
  const { columns, onColumns } = props
  const logging = bench.logging.value
  return (
    <>
      {!props.fixed && (
        <SelectField
          label="This log is of"
          value={chosen}
          options={[
            ...BENCH_STEPS.map(({ id, name }) => ({ value: id, text: name })),
            { value: FREE_STEP.id, text: 'something else, moved freely' },
          ]}
          onChange={setAs}
        />
      )}
      <p>{benchStep(chosen).instruction}</p>
      <FileButton
        accept=".csv,.txt,.tsv,.log,text/csv,text/plain"
        onFiles={([file]) => file && void bring({ name: file.name, blob: file })}
      >
        Choose a file
      </FileButton>
      <label class="field board-paste">
        <span>or paste lines</span>
        <textarea
          rows={4}
          value={text}
          spellcheck={false}
          onInput={(event) => paste(event.currentTarget.value)}
        />
      </label>
      {said !== null && (
        <Notice tone={said.wrong ? 'trouble' : 'plain'} live>
          {said.text}
        </Notice>
      )}
      {brought !== null && columns !== null && (
        <Columns columns={columns} onChange={onColumns} open />
      )}
      {logging !== null && (
        <Progress
          progress={{ done: logging.share, total: 1, what: 'Reading the log' }}
          cancel={() => bench.stopLogging()}
        />
      )}
      {brought !== null && logging === null && (
        <Button tone="amber" big wide onClick={() => void read()}>
          Read the log
        </Button>
      )}
    </>
  )
}

function whatWasRead({
  log,
  cut,
}: {
  log: Parameters<typeof rowCount>[0]
  cut: string | null
}): string {
  const rows = `${groupDigits(rowCount(log))} samples read.`
  const [first] = log.problems
  const bad = first === undefined ? '' : ` ${leftOut(log.problemCount, first)}`
  const checked =
    rowCount(log) > MOST_CHECKED
      ? ` The check looks at the first ${groupDigits(MOST_CHECKED)}.`
      : ''
  const ends: Record<string, string> = {
    stopped: ' The rest was not read, as you stopped it.',
    'too-long': ` The rest was left: a log has at most ${groupDigits(MAX_ROWS)} samples here.`,
    broken: ' Then the file could not be read further; what was read is kept.',
  }
  return `${rows}${checked}${bad}${cut === null ? '' : (ends[cut] ?? '')}`
}

function leftOut(count: number, { line, what }: { line: number; what: string }): string {
  return count === 1
    ? `1 line was left out: line ${line}, ${what}.`
    : `${groupDigits(count)} lines were left out; the first is line ${line}: ${what}.`
}
