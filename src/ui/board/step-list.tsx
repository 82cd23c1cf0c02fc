import { BENCH_STEPS, type BenchPart, FREE_STEP, type StepId } from '../../shared/board/check/steps'
import { rowCount } from '../../shared/board/log/board-log'
import { BOARD_LOGS } from '../../shared/words/en/board-logs'
import { Button, Icon } from '../common'
import { useBoard } from './use-board'

/** The first step without a log; null when all are there. */
export function nextStep(parts: readonly BenchPart[]): StepId | null {
  const done = new Set(parts.map(({ step }) => step))
  return BENCH_STEPS.find(({ id }) => !done.has(id))?.id ?? null
}

export interface StepListProps {
  current: StepId | null
  onChoose: (step: StepId) => void
}

/** The routine with what was logged of it; tapping a step makes it the one to do now. */
export function StepList({ current, onChoose }: StepListProps) {
  const { bench } = useBoard()
  const parts = bench.parts.value
  return (
    <>
      <ol class="board-steps">
        {[...BENCH_STEPS, FREE_STEP].map(({ id, name }) => {
          const part = parts.find(({ step }) => step === id)
          return (
            <li key={id} class={id === current ? 'board-step board-step-now' : 'board-step'}>
              <button type="button" aria-pressed={id === current} onClick={() => onChoose(id)}>
                <span>{name}</span>
                <span class="quiet small">
                  {part === undefined ? '–' : BOARD_LOGS.step.sampleCount(rowCount(part.log))}
                </span>
              </button>
              {part !== undefined && (
                <Button
                  tone="quiet"
                  label={BOARD_LOGS.step.remove(name)}
                  onClick={() => bench.remove(id)}
                >
                  <Icon name="bin" />
                </Button>
              )}
            </li>
          )
        })}
      </ol>
      {parts.length > 0 && (
        <Button tone="quiet" onClick={() => bench.clear()}>
          {BOARD_LOGS.step.removeAll}
        </Button>
      )}
    </>
  )
}
