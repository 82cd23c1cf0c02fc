import { useState } from 'preact/hooks'
import { benchStep, type StepId } from '../../shared/board/check/steps'
import type { CsvMapping } from '../../shared/format/csv-mapping'
import { BOARD_LOGS } from '../../shared/words/en/board-logs'
import { Button, Notice, Progress } from '../common'
import { useBoard } from './use-board'

export interface LogStepProps {
  step: StepId
  /** Null until the columns are known. */
  mapping: CsvMapping | null
  onDone: () => void
}

/** The step to do now, within reach of the thumb that does not hold the board. */
export function LogStep({ step, mapping, onDone }: LogStepProps) {
  const { bench, link } = useBoard()
  const [wrong, setWrong] = useState<string | null>(null)
  const logging = bench.logging.value
  const facts = benchStep(step)
  if (link.state.value.state !== 'on' && logging === null) return null
  const log = async () => {
    if (mapping === null) return
    const done = await bench.logStep(step, mapping)
    setWrong(done.ok ? null : done.message)
    if (done.ok) onDone()
  }
  return (
    <div class="board-now">
      {wrong !== null && <Notice tone="trouble">{wrong}</Notice>}
      <p>{facts.instruction}</p>
      {logging !== null ? (
        <Progress
          progress={{
            done: logging.share,
            total: 1,
            what: BOARD_LOGS.step.samples(facts.name, logging.rows),
          }}
          cancel={() => bench.stopLogging()}
        />
      ) : (
        <Button tone="amber" big wide disabled={mapping === null} onClick={() => void log()}>
          {BOARD_LOGS.step.logFor(facts.seconds)}
        </Button>
      )}
    </div>
  )
}
