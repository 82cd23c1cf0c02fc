import { useState } from 'preact/hooks'
import type { StepId } from '../../shared/board/check/steps'
import type { CsvPreview } from '../../shared/format/csv-import'
import type { CsvMapping } from '../../shared/format/csv-mapping'
import { BOARD_LOGS } from '../../shared/words/en/board-logs'
import { Button, Choice, NextStep, Screen, Section, useApp } from '../common'
import { AddLog } from './add-log'
import { Columns } from './columns'
import { Findings } from './findings'
import { KeepLog } from './keep-log'
import { LinkSection } from './link-section'
import { LogStep } from './log-step'
import { SimulatedBoard } from './simulated-board'
import { nextStep, StepList } from './step-list'
import { useBoard } from './use-board'

type Way = 'serial' | 'file' | 'simulated'

/** The columns of what the board prints, and whether they were chosen for the logs that follow. */
export interface ChosenColumns {
  preview: CsvPreview
  mapping: CsvMapping
}

/** The morning the boards arrive: is the sensor alive, scaled, oriented and timed right? */
export function BoardScreen() {
  const board = useBoard()
  const { library } = useApp()
  if (library.current.value === null) {
    return (
      <Screen title={BOARD_LOGS.check.title} back="#/prop">
        <NextStep
          text={BOARD_LOGS.check.noLibrary}
          action={BOARD_LOGS.check.toMoves}
          href="#/moves"
        />
      </Screen>
    )
  }
  return <BoardCheck hasSerial={board.link.possible} />
}

function BoardCheck({ hasSerial }: { hasSerial: boolean }) {
  const { bench, link } = useBoard()
  const [way, setWay] = useState<Way>(hasSerial ? 'serial' : 'file')
  const [chosen, setChosen] = useState<StepId | null>(null)
  const [columns, setColumns] = useState<ChosenColumns | null>(null)
  const step = chosen ?? nextStep(bench.parts.value)
  const guessed = link.preview.value
  const live =
    columns ?? (guessed !== null && typeof guessed === 'object' ? withMapping(guessed) : null)
  const goOn = () => setChosen(null)
  const foot =
    way === 'serial' && step !== null ? (
      <LogStep step={step} mapping={live?.mapping ?? null} onDone={goOn} />
    ) : undefined
  return (
    <Screen title={BOARD_LOGS.check.title} back="#/prop" foot={foot}>
      <p class="quiet">{BOARD_LOGS.check.routine}</p>
      <Choice
        legend={BOARD_LOGS.check.wayLegend}
        value={way}
        options={[
          { value: 'serial', text: BOARD_LOGS.check.overCable },
          { value: 'file', text: BOARD_LOGS.check.asFile },
          { value: 'simulated', text: BOARD_LOGS.check.simulated },
        ]}
        onChange={(next) => {
          setWay(next)
          setColumns(null)
        }}
      />
      {way === 'serial' && <LinkSection />}
      {way === 'serial' && live !== null && <Columns columns={live} onChange={setColumns} />}
      {way === 'file' && (
        <AddLog step={step ?? 'free'} columns={columns} onColumns={setColumns} onDone={goOn} />
      )}
      {way === 'simulated' && <SimulatedBoard />}
      <Findings />
      <Section title={BOARD_LOGS.check.nextTitle}>
        <Button href="#/board/calibration">{BOARD_LOGS.check.calibration}</Button>
        <Button href="#/board/mounting">{BOARD_LOGS.check.mounting}</Button>
        <Button href="#/board/decision">{BOARD_LOGS.check.decision}</Button>
      </Section>
      <KeepLog />
      <Section title={BOARD_LOGS.check.steps}>
        <StepList current={step} onChoose={setChosen} />
      </Section>
    </Screen>
  )
}

function withMapping(preview: CsvPreview): ChosenColumns {
  return { preview, mapping: preview.mapping }
}
