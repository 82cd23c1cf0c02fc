import { useState } from 'preact/hooks'
import { MOST_CHECKED } from '../../shared/board/check/bench-log'
import { BENCH_STEPS, benchStep, FREE_STEP, type StepId } from '../../shared/board/check/steps'
import { rowCount } from '../../shared/board/log/board-log'
import {
  MAX_ROWS,
  PREVIEW_CHARACTERS,
  previewLog,
  type ReadLog,
} from '../../shared/board/log/read-log'
import { BOARD_LOGS } from '../../shared/words/en/board-logs'
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
    if (pasted !== '') void bring({ name: BOARD_LOGS.add.pastedText, blob: new Blob([pasted]) })
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
          label={BOARD_LOGS.add.logOf}
          value={chosen}
          options={[
            ...BENCH_STEPS.map(({ id, name }) => ({ value: id, text: name })),
            { value: FREE_STEP.id, text: BOARD_LOGS.add.movedFreely },
          ]}
          onChange={setAs}
        />
      )}
      <p>{benchStep(chosen).instruction}</p>
      <FileButton
        accept=".csv,.txt,.tsv,.log,text/csv,text/plain"
        onFiles={([file]) => file && void bring({ name: file.name, blob: file })}
      >
        {BOARD_LOGS.add.chooseFile}
      </FileButton>
      <label class="field board-paste">
        <span>{BOARD_LOGS.add.pasteLines}</span>
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
          progress={{ done: logging.share, total: 1, what: BOARD_LOGS.add.reading }}
          cancel={() => bench.stopLogging()}
        />
      )}
      {brought !== null && logging === null && (
        <Button tone="amber" big wide onClick={() => void read()}>
          {BOARD_LOGS.add.readLog}
        </Button>
      )}
    </>
  )
}

/** Samples read, whether all are checked, lines left out, and why the log ends where it does. */
function whatWasRead({ log, cut }: ReadLog): string {
  const { add } = BOARD_LOGS
  const rows = rowCount(log)
  const [first] = log.problems
  return [
    add.samplesRead(rows),
    rows > MOST_CHECKED ? add.checkedFirst(MOST_CHECKED) : null,
    first === undefined ? null : add.leftOut(log.problemCount, first.line, first.what),
    cut === null ? null : add.cut[cut](MAX_ROWS),
  ]
    .filter((sentence) => sentence !== null)
    .join(' ')
}
