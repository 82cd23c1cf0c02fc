import { useState } from 'preact/hooks'
import type { StepId } from '../../shared/board/check/steps'
import type { CsvPreview } from '../../shared/format/csv-import'
import type { CsvMapping } from '../../shared/format/csv-mapping'
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
      <Screen title="Board check" back="#/prop">
        <NextStep
          text="A board is compared with the target of a library, and none is open."
          action="Go to Moves"
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
    <Screen title="Board check" back="#/prop" foot={foot}>
      <p class="quiet">
        Rest, six faces, three turns and a shake, about two minutes. What is missing is not asked:
        one log is enough for a first look.
      </p>
      <Choice
        legend="The board's readings come"
        value={way}
        options={[
          { value: 'serial', text: 'over a cable' },
          { value: 'file', text: 'as a file or text' },
          { value: 'simulated', text: 'simulated' },
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
      <Section title="What the logs are good for next">
        <Button href="#/board/calibration">Calibration from six faces</Button>
        <Button href="#/board/mounting">Mounting, from a phone on the same prop</Button>
        <Button href="#/board/decision">Does the board decide as the phone did?</Button>
      </Section>
      <KeepLog />
      <Section title="Steps">
        <StepList current={step} onChoose={setChosen} />
      </Section>
    </Screen>
  )
}

function withMapping(preview: CsvPreview): ChosenColumns {
  return { preview, mapping: preview.mapping }
}
