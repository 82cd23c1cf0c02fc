import { useState } from 'preact/hooks'
import { BOARD_LOGS } from '../../shared/words/en/board-logs'
import type { LogLabels } from '../../state/app'
import { Button, Notice, Section, useApp } from '../common'
import { LabelFields } from '../library/label-fields'
import { useBoard } from './use-board'

/** What the board logged can be a take or background like any other, turned into the phone's axes. */
export function KeepLog() {
  const board = useBoard()
  const { library, record } = useApp()
  const [labels, setLabels] = useState<LogLabels>({
    gestureId: null,
    testerCode: record.testerCode.value,
    hand: 'unknown',
  })
  const [said, setSaid] = useState<{ text: string; wrong: boolean } | null>(null)
  const free = board.bench.parts.value.some(({ step }) => step === 'free')
  if (!free || board.bench.simulated.value) return null
  const keep = async () => {
    const kept = await board.beside.keepLog(labels)
    setSaid(
      kept.ok ? { text: BOARD_LOGS.keep.kept, wrong: false } : { text: kept.message, wrong: true },
    )
  }
  return (
    <Section title={BOARD_LOGS.keep.title}>
      <LabelFields
        gestures={library.current.value?.gestures ?? []}
        labels={labels}
        onChange={setLabels}
      />
      {said !== null && <Notice tone={said.wrong ? 'trouble' : 'plain'}>{said.text}</Notice>}
      <Button wide disabled={labels.testerCode === ''} onClick={() => void keep()}>
        {BOARD_LOGS.keep.keep}
      </Button>
    </Section>
  )
}
